package tripline.measure;

/** The law of the range (largest minus smallest) of n values of the standard normal law. */
final class RangeLaw {
  private static final double TAIL = 8.5;
  private static final int PANELS = 48;

  private RangeLaw() {}

  /** Probability of a range at most w (at least 0), for n at least 2. */
  static double cdf(double w, int n) {
    return n
        * Quadrature.over(-TAIL, TAIL, PANELS)
            .underGauss()
            .integral(x -> Math.pow(Gauss.between(x, x + w), n - 1));
  }

  /** The range with probability p below it. */
  static double quantile(double p, int n) {
    Finite.requireAtLeast(2, n, "values of a range");
    Finite.requireProbability(p, "probability");
    return Roots.between(0, 2 * TAIL, w -> cdf(w, n) - p);
  }
}
