package tripline.harness.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A number as the result file writes it: nine significant digits, and four decimals where there are
 * more digits before them (raw counts). Halves go away from zero, of the value to its last bit.
 */
final class JsonNumber {
  /** Beyond any logger's, and short enough to read. */
  static final MathContext DIGITS = new MathContext(9, RoundingMode.HALF_UP);

  private static final int DECIMALS = 4;

  /** More than these a double does not hold. */
  private static final int MOST_DIGITS = 15;

  /** Numbers with more zeros than this are written with an exponent. */
  private static final int MOST_ZEROS = 6;

  /** Between these there are neither many digits nor many zeros, and a {@code long} holds them. */
  private static final double SMALLEST_USUAL = 1e-7;

  private static final double LARGEST_USUAL = 1e6;

  /** Powers of ten that are doubles. */
  private static final double[] TENS = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  private JsonNumber() {}

  /** The text of a finite number. */
  static String of(double value) {
    double size = Math.abs(value);
    if (size >= SMALLEST_USUAL && size < LARGEST_USUAL) {
      return usual(value < 0, size);
    }
    return size == 0 ? "0" : exact(value);
  }

  /** The same digits as {@link #exact}, without its big numbers. */
  private static String usual(boolean negative, double size) {
    int decimals = DIGITS.getPrecision() - wholeDigits(size);
    decimals = Math.max(decimals, DECIMALS);
    double scaled = size * TENS[decimals];
    double lost = Math.fma(size, TENS[decimals], -scaled);
    long digits = (long) scaled;
    double beyondHalf = scaled - digits - 0.5;
    if (beyondHalf > 0 || (beyondHalf == 0 && lost >= 0)) {
      digits++;
    }
    while (decimals > 0 && digits % 10 == 0) {
      digits /= 10;
      decimals--;
    }
    return point(negative, Long.toString(digits), decimals);
  }

  /** How many digits stand before the point; less than 0 where zeros follow it. */
  private static int wholeDigits(double size) {
    int digits = 0;
    if (size >= 1) {
      while (size >= TENS[digits]) {
        digits++;
      }
      return digits;
    }
    while (size * TENS[1 - digits] < 1) {
      digits--;
    }
    return digits;
  }

  private static String point(boolean negative, String digits, int decimals) {
    StringBuilder text = new StringBuilder(18);
    if (negative) {
      text.append('-');
    }
    int whole = digits.length() - decimals;
    if (whole > 0) {
      text.append(digits, 0, whole);
    } else {
      text.append('0');
    }
    if (decimals > 0) {
      text.append('.');
      for (int i = whole; i < 0; i++) {
        text.append('0');
      }
      text.append(digits, Math.max(0, whole), digits.length());
    }
    return text.toString();
  }

  /** The text of any finite number. */
  static String exact(double value) {
    BigDecimal exact = new BigDecimal(value);
    int whole = exact.precision() - exact.scale();
    int digits = Math.max(DIGITS.getPrecision(), Math.min(whole + DECIMALS, MOST_DIGITS));
    BigDecimal rounded = exact.round(new MathContext(digits));
    if (rounded.signum() == 0) {
      return "0";
    }
    BigDecimal stripped = rounded.stripTrailingZeros();
    int zeros = Math.max(stripped.scale() - stripped.precision(), -stripped.scale());
    return zeros > MOST_ZEROS ? stripped.toString() : stripped.toPlainString();
  }
}
