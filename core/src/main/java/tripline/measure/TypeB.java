package tripline.measure;

/**
 * Standard uncertainties of assumed laws (JCGM 100:2008 4.3.7, 4.3.9 and F.2.2.1). All arguments
 * are finite and at least 0; results have their unit.
 */
public final class TypeB {
  private TypeB() {}

  /** Uniform within plus or minus a. */
  public static double rectangular(double a) {
    return Finite.requireNotNegative(a, "half-width") / Math.sqrt(3);
  }

  /** Uniform between two bounds, lower not above upper: a sampled change between two samples. */
  public static double between(double lower, double upper) {
    return Finite.requireNotNegative(upper - lower, "width") / Math.sqrt(12);
  }

  /** Rounded to steps of q. */
  public static double resolution(double q) {
    return between(0, q);
  }

  /** Difference of two readings rounded to steps of q. */
  public static double differenceOfReadings(double q) {
    return Finite.requireNotNegative(q, "step") / Math.sqrt(6);
  }

  /** Triangular within plus or minus a. */
  public static double triangular(double a) {
    return Finite.requireNotNegative(a, "half-width") / Math.sqrt(6);
  }

  /** U-shaped within plus or minus a: a sinusoid met at a random phase. */
  public static double arcsine(double a) {
    return Finite.requireNotNegative(a, "half-width") / Math.sqrt(2);
  }

  /**
   * Trapezoid with base 2a and top 2a beta.
   *
   * @param beta 0 (triangle) to 1 (rectangle)
   */
  public static double trapezoid(double a, double beta) {
    if (!(beta >= 0 && beta <= 1)) {
      throw new IllegalArgumentException("beta is not from 0 to 1: " + beta);
    }
    return Finite.requireNotNegative(a, "half-width") * Math.sqrt((1 + beta * beta) / 6);
  }
}
