package tripline.measure;

/**
 * What a figure may be: from lower to upper, both included. A missing limit is infinite.
 *
 * @param lower smallest permitted value, or negative infinity
 * @param upper largest permitted value, or positive infinity
 */
public record Limits(double lower, double upper) {

  /**
   * @throws IllegalArgumentException if a limit is not a number or lower is above upper
   */
  public Limits {
    if (!(lower <= upper)) {
      throw new IllegalArgumentException("limits " + lower + " to " + upper);
    }
  }

  /** Target plus or minus tolerance (at least 0). */
  public static Limits around(double target, double tolerance) {
    Finite.requireNotNegative(tolerance, "tolerance");
    return new Limits(target - tolerance, target + tolerance);
  }

  /** No lower limit. */
  public static Limits atMost(double upper) {
    return new Limits(Double.NEGATIVE_INFINITY, upper);
  }

  /** No upper limit. */
  public static Limits atLeast(double lower) {
    return new Limits(lower, Double.POSITIVE_INFINITY);
  }

  /** True if the value is inside or on a limit. */
  public boolean contain(double value) {
    return value >= lower && value <= upper;
  }
}
