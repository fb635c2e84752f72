package tripline.measure;

/**
 * Mean and scatter of a few or many figures, by compensated sums in two passes, so that a large
 * common offset costs no digits.
 *
 * @param n count, at least 1
 * @param mean arithmetic mean
 * @param sd experimental standard deviation with n - 1 (JCGM 100 4.2.2); NaN for n = 1, where it
 *     does not exist
 * @param min smallest
 * @param max largest
 * @param lag1 autocorrelation at lag 1, {@code sum (y_i-m)(y_i+1-m) / sum (y_i-m)^2}; NaN for n = 1
 *     or no scatter
 */
public record Moments(int n, double mean, double sd, double min, double max, double lag1) {

  /**
   * Moments of figures in the order they were measured.
   *
   * @param values in the order they were measured, finite; not kept
   * @throws IllegalArgumentException if there are none or one is not finite
   */
  public static Moments of(double... values) {
    int n = Finite.requireAtLeast(1, values.length, "values");
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      Finite.require(value, "value");
      min = Math.min(min, value);
      max = Math.max(max, value);
    }
    double first = values[0];
    Sum offsets = new Sum();
    for (double value : values) {
      offsets.add(value - first);
    }
    double meanOffset = offsets.value() / n;
    Sum residuals = new Sum();
    Sum squares = new Sum();
    Sum products = new Sum();
    double before = 0;
    for (double value : values) {
      double residual = value - first - meanOffset;
      residuals.add(residual);
      squares.add(residual * residual);
      products.add(before * residual);
      before = residual;
    }
    double left = residuals.value();
    double ss = Math.max(0, squares.value() - left * left / n);
    double sd = n > 1 ? Math.sqrt(ss / (n - 1)) : Double.NaN;
    double lag1 = n > 1 && ss > 0 ? products.value() / ss : Double.NaN;
    return new Moments(n, first + meanOffset, sd, min, max, lag1);
  }

  /** Largest minus smallest. */
  public double range() {
    return max - min;
  }

  /** Experimental standard deviation of the mean (JCGM 100 4.2.3); NaN for n = 1. */
  public double sdOfMean() {
    return sd / Math.sqrt(n);
  }
}
