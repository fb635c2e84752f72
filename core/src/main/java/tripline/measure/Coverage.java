package tripline.measure;

import java.util.Arrays;

/**
 * The law of a sum of rectangular errors and one normal error, all centred on zero; gives the
 * interval that really holds 95 % (JCGM 101:2008 9.2.3: four equal rectangles need 1.94 u, one
 * needs 1.645 u, not 1.96 u).
 *
 * <p>Exact for up to {@value Budget#MOST_RECTANGLES} rectangles that each hold at least a hundredth
 * of the variance; the others join the normal part, which changes the interval by less than 0.2 %.
 * The distribution function is the finite difference, over the corners of the box of half-widths,
 * of the repeated integral of the normal one; with no normal part it is the Irwin-Hall law.
 */
public final class Coverage {
  private static final double SQRT3 = Math.sqrt(3);
  private static final double LEAST_SHARE = 0.1;
  private static final double VANISHING = 1e-9;

  private final double u;
  private final double sigma;
  private final double[] halfWidths;

  private Coverage(double u, double sigma, double[] halfWidths) {
    this.u = u;
    this.sigma = sigma;
    this.halfWidths = halfWidths;
  }

  /**
   * The law of one normal and any number of rectangular parts, all independent.
   *
   * @param normalU standard uncertainty of the normal part, at least 0
   * @param rectangularU standard uncertainties (half-width / sqrt 3) of independent rectangular
   *     parts; their sign does not matter
   */
  public static Coverage of(double normalU, double... rectangularU) {
    double normalVariance = Finite.requireNotNegative(normalU, "normal part") * normalU;
    double variance = normalVariance;
    double[] sorted = new double[rectangularU.length];
    for (int i = 0; i < sorted.length; i++) {
      sorted[i] = Math.abs(Finite.require(rectangularU[i], "rectangular part"));
      variance += sorted[i] * sorted[i];
    }
    Arrays.sort(sorted);
    double u = Math.sqrt(variance);
    double[] exact = new double[Math.min(sorted.length, Budget.MOST_RECTANGLES)];
    int count = 0;
    for (int i = sorted.length - 1; i >= 0; i--) {
      if (u > 0 && count < exact.length && sorted[i] >= LEAST_SHARE * u) {
        exact[count++] = sorted[i] / u * SQRT3;
      } else {
        normalVariance += sorted[i] * sorted[i];
      }
    }
    double sigma = u > 0 ? Math.sqrt(normalVariance) / u : 0;
    return new Coverage(u, sigma, Arrays.copyOf(exact, count));
  }

  /** Combined standard uncertainty. */
  public double u() {
    return u;
  }

  /** Probability that the error is within plus or minus {@code halfWidth} (at least 0). */
  public double probability(double halfWidth) {
    Finite.requireNotNegative(halfWidth, "half-width");
    return u == 0 ? 1 : standardProbability(halfWidth / u);
  }

  /** Half-width of the symmetric interval that holds the error with probability p, 0 to 1. */
  public double halfWidth(double p) {
    return u == 0 ? 0 : u * factor(p);
  }

  /**
   * Coverage factor k = half-width / u for probability p.
   *
   * @throws IllegalArgumentException if p is not between 0 and 1
   */
  public double factor(double p) {
    Finite.requireProbability(p, "probability");
    if (u == 0 || halfWidths.length == 0) {
      return Gauss.quantile(0.5 + 0.5 * p);
    }
    double beyond = Arrays.stream(halfWidths).sum() - sigma * Gauss.quantile(0.25 * (1 - p));
    return Roots.between(0, beyond, k -> standardProbability(k) - p);
  }

  private double standardProbability(double k) {
    double volume = 1;
    for (double a : halfWidths) {
      volume *= 2 * a;
    }
    Sum sum = new Sum();
    for (int corner = 0; corner < 1 << halfWidths.length; corner++) {
      double x = k;
      int sign = 1;
      for (int i = 0; i < halfWidths.length; i++) {
        boolean low = (corner >> i & 1) != 0;
        x += low ? -halfWidths[i] : halfWidths[i];
        sign = low ? -sign : sign;
      }
      sum.add(sign * repeatedIntegral(x));
    }
    return Math.max(0, Math.min(1, 2 * sum.value() / volume - 1));
  }

  /** The normal distribution function of width sigma, integrated once for each rectangle. */
  private double repeatedIntegral(double x) {
    int order = halfWidths.length;
    if (sigma < VANISHING) {
      double value = x > 0 ? 1 : 0;
      for (int n = 1; n <= order; n++) {
        value *= x / n;
      }
      return value;
    }
    double before = Gauss.density(x / sigma) / sigma;
    double value = Gauss.cdf(x / sigma);
    for (int n = 1; n <= order; n++) {
      double next = (x * value + sigma * sigma * before) / n;
      before = value;
      value = next;
    }
    return value;
  }
}
