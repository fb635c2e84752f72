package tripline.harness.report;

import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;

/** Figures as a record prints them. */
public final class FigureText {
  private static final Rounded ROUNDED = new Rounded("±");
  private static final double DEGREES = 360;

  private FigureText() {}

  /** {@code 0.512 ± 0.021}; a dash where there is no figure. */
  public static String interval(@Nullable Double value, @Nullable Double half) {
    return ROUNDED.interval(value, half);
  }

  /** The figure alone, rounded to what its uncertainty supports. */
  public static String value(double value, double half) {
    return Figures.decimals(value, Rounded.decimals(half));
  }

  /** Four significant digits at most, for figures without an uncertainty of their own. */
  public static String plain(double value) {
    return Figures.text(value);
  }

  /** With its sign. */
  public static String signed(double value, double half) {
    return Rounded.signed(value, half);
  }

  /** A standard uncertainty, to two significant digits. */
  public static String uncertainty(double u) {
    return Figures.decimals(u, Rounded.decimals(u));
  }

  /** A target and its tolerance. */
  public static String target(@Nullable Double target, @Nullable Double tolerance) {
    return ROUNDED.target(target, tolerance);
  }

  /** Turns as degrees of the handwheel, with their uncertainty. */
  public static String degrees(double turns, @Nullable Double half) {
    double u = half == null ? 0 : half * DEGREES;
    int decimals = Math.min(1, Rounded.decimals(u));
    String text = Figures.decimals(turns * DEGREES, decimals);
    return (u > 0 ? text + "° ± " + Figures.decimals(u, decimals) : text) + "°";
  }

  /** A target in turns as degrees of the handwheel. */
  public static String degreesOf(double turns, double tolerance) {
    return Figures.decimals(turns * DEGREES, 0)
        + "° ± "
        + Figures.decimals(tolerance * DEGREES, 0)
        + "°";
  }

  /** A probability in per cent, never rounded to certainty. */
  public static String probability(@Nullable Double p) {
    return Rounded.probability(p);
  }

  /** {@code accept}, {@code REJECT}, {@code undecided}. */
  public static String word(Decision decision) {
    return Page.word(decision);
  }
}
