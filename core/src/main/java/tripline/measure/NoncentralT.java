package tripline.measure;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Noncentral t: the law of {@code (Z + delta) / sqrt(chi2(nu) / nu)}. By integrating the
 * chi-squared tail over Z; about nine digits for the degrees of freedom and noncentralities of
 * tolerance factors (nu 1 to 200, delta to 50).
 */
final class NoncentralT {
  private static final double TAIL = 9;
  private static final int PANELS = 40;

  private NoncentralT() {}

  /** Probability of a value at most t. */
  static double cdf(double t, double nu, double delta) {
    if (t < 0) {
      return 1 - cdf(-t, nu, -delta);
    }
    double below = Gauss.cdf(-delta);
    double from = Math.max(-delta, -TAIL);
    if (t == 0 || from >= TAIL) {
      return below;
    }
    ChiSquaredDistribution chiSquared = ChiSquaredDistribution.of(nu);
    double above =
        Quadrature.over(from, TAIL, PANELS)
            .underGauss()
            .integral(
                z -> {
                  double ratio = (z + delta) / t;
                  return chiSquared.survivalProbability(nu * ratio * ratio);
                });
    return Math.min(1, below + above);
  }

  /** The value with probability p below it. */
  static double quantile(double p, double nu, double delta) {
    Finite.requireProbability(p, "probability");
    double step = 1;
    double lo = delta - step;
    while (cdf(lo, nu, delta) > p) {
      step *= 2;
      lo -= step;
    }
    step = 1;
    double hi = delta + step;
    while (cdf(hi, nu, delta) < p) {
      step *= 2;
      hi += step;
    }
    return Roots.between(lo, hi, t -> cdf(t, nu, delta) - p);
  }
}
