package tripline.harness.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as people read them. */
public final class Figures {
  /** What is smaller than this is nothing: rounding of something that cancelled. */
  private static final double LEAST = 1e-9;

  private Figures() {}

  /** Four significant digits at most, no exponent, no trailing zeros. */
  public static String text(double value) {
    return text(value, 4);
  }

  /** So many significant digits at most, no exponent, no trailing zeros; what is nearly 0 is 0. */
  public static String text(double value, int digits) {
    if (Math.abs(value) < LEAST) {
      return "0";
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
    return rounded.stripTrailingZeros().toPlainString();
  }

  /** A number of decimals. */
  public static String decimals(double value, int decimals) {
    return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
