package tripline.measure;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Factors k of statistical tolerance intervals of a normal population whose mean and standard
 * deviation are both estimated from n values (ISO 16269-6): with the stated confidence, {@code mean
 * plus or minus k s} holds at least the stated share of all future values.
 *
 * <p>Exact, by numerical integration, not the chi-squared approximation of the handbooks (0.4 % low
 * at n = 10, more below).
 */
public final class ToleranceFactor {
  private static final double TAIL = 8.5;
  private static final int PANELS = 24;

  private ToleranceFactor() {}

  /**
   * Factor of the interval with two ends.
   *
   * @param n values, at least 2
   * @param share of future values, between 0 and 1
   * @param confidence between 0 and 1
   */
  public static double twoSided(int n, double share, double confidence) {
    Finite.requireAtLeast(2, n, "values");
    Finite.requireProbability(share, "share");
    Finite.requireProbability(confidence, "confidence");
    double nu = n - 1;
    double rootN = Math.sqrt(n);
    // Half the law of the mean; the other half mirrors it.
    Quadrature rule = Quadrature.over(0, TAIL, PANELS).underGauss();
    double[] needed = rule.values(z -> halfWidthHolding(share, z / rootN));
    ChiSquaredDistribution chiSquared = ChiSquaredDistribution.of(nu);
    double low = 0.1 * halfWidthHolding(share, 0);
    double high =
        halfWidthHolding(share, TAIL / rootN)
            * Math.sqrt(nu / chiSquared.inverseCumulativeProbability(0.5 * (1 - confidence)));
    double[] tail = new double[needed.length];
    return Roots.between(
        low,
        high,
        k -> {
          for (int i = 0; i < tail.length; i++) {
            double ratio = needed[i] / k;
            tail[i] = chiSquared.survivalProbability(nu * ratio * ratio);
          }
          return 2 * rule.integral(tail) - confidence;
        });
  }

  /**
   * Factor of the interval with one end: {@code mean + k s} is above (or {@code mean - k s} below)
   * at least the share. May be negative for low confidence.
   *
   * @param n values, at least 2
   * @param share of future values, between 0 and 1
   * @param confidence between 0 and 1
   */
  public static double oneSided(int n, double share, double confidence) {
    Finite.requireAtLeast(2, n, "values");
    Finite.requireProbability(share, "share");
    Finite.requireProbability(confidence, "confidence");
    double rootN = Math.sqrt(n);
    return NoncentralT.quantile(confidence, n - 1, rootN * Gauss.quantile(share)) / rootN;
  }

  /** Half-width about an offset centre that holds the share of the standard normal law. */
  private static double halfWidthHolding(double share, double offset) {
    double central = Gauss.quantile(0.5 + 0.5 * share);
    double margin = 1e-6 * central;
    return Roots.between(
        central - margin,
        central + offset + margin,
        r -> Gauss.between(offset - r, offset + r) - share);
  }
}
