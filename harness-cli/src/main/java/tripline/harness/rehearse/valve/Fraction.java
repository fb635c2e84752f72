package tripline.harness.rehearse.valve;

/**
 * A ratio as the link states a scale.
 *
 * @param numerator at least 1
 * @param denominator at least 1
 */
record Fraction(int numerator, long denominator) {
  private static final double CLOSE = 1e-10;
  private static final double LARGEST = 1e9;

  /** The simplest ratio within 1e-10 of a positive value, by its continued fraction. */
  static Fraction near(double value) {
    double before = 1;
    double numerator = Math.floor(value);
    double denominatorBefore = 0;
    double denominator = 1;
    double rest = value - numerator;
    while (numerator == 0 || Math.abs(numerator / denominator - value) > CLOSE * value) {
      double inverse = 1 / rest;
      double whole = Math.floor(inverse);
      double nextNumerator = whole * numerator + before;
      double nextDenominator = whole * denominator + denominatorBefore;
      if (nextNumerator > LARGEST || nextDenominator > LARGEST) {
        break;
      }
      before = numerator;
      numerator = nextNumerator;
      denominatorBefore = denominator;
      denominator = nextDenominator;
      rest = inverse - whole;
    }
    return new Fraction((int) Math.max(1, numerator), (long) denominator);
  }
}
