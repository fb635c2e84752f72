package tripline.harness.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Figures rounded to what their uncertainty supports: the uncertainty to two significant digits,
 * the figure to the same place (JCGM 100:2008 7.2.6).
 */
final class Rounded {
  private static final int MOST_DECIMALS = 5;

  private final String plusMinus;

  Rounded(String plusMinus) {
    this.plusMinus = plusMinus;
  }

  /** Decimals that a figure with this uncertainty deserves; 3 where none is known. */
  static int decimals(double uncertainty) {
    if (!(uncertainty > 0) || Double.isInfinite(uncertainty)) {
      return 3;
    }
    int scale = new BigDecimal(uncertainty).round(new MathContext(2)).scale();
    return Math.max(0, Math.min(MOST_DECIMALS, scale));
  }

  /** {@code 0.512 ± 0.021}; without an uncertainty the figure alone. */
  String interval(double value, double half) {
    int decimals = decimals(half);
    String text = Figures.decimals(value, decimals);
    return half > 0 ? text + " " + plusMinus + " " + Figures.decimals(half, decimals) : text;
  }

  /** {@code ±}, as this page writes it. */
  String plusMinus() {
    return plusMinus;
  }

  /** {@code ± 0.021}. */
  String half(double half) {
    return plusMinus + " " + Figures.decimals(half, decimals(half));
  }

  /** As above, a dash where there is no figure. */
  String interval(@Nullable Double value, @Nullable Double half) {
    return value == null ? "-" : interval(value.doubleValue(), half == null ? 0 : half);
  }

  /** A target and its tolerance on the same decimals, two or as many as they need up to three. */
  String target(@Nullable Double target, @Nullable Double tolerance) {
    if (target == null) {
      return "-";
    }
    double half = tolerance == null ? 0 : tolerance;
    int decimals = Math.max(needed(target), needed(half));
    String text = Figures.decimals(target, decimals);
    return tolerance == null
        ? text
        : text + " " + plusMinus + " " + Figures.decimals(half, decimals);
  }

  private static int needed(double value) {
    BigDecimal exact = new BigDecimal(value).setScale(6, RoundingMode.HALF_UP).stripTrailingZeros();
    return Math.max(2, Math.min(3, exact.scale()));
  }

  /** With its sign, to the decimals an uncertainty supports. */
  static String signed(double value, double half) {
    String text = Figures.decimals(value, decimals(half));
    return text.startsWith("-") ? text : "+" + text;
  }

  /** A probability in per cent; never rounded to certainty. */
  static String probability(@Nullable Double p) {
    if (p == null) {
      return "-";
    }
    return p > 0.999 ? "> 99.9 %" : p < 0.001 ? "< 0.1 %" : Figures.decimals(100 * p, 1) + " %";
  }
}
