package tripline.assess;

import java.util.Locale;

/** Figures as sentences state them, rounded to what a hand can turn and an eye can read. */
public final class Amounts {
  private Amounts() {}

  /** Travel, to a hundredth of a turn: {@code 0.25 turn}, {@code 7.75 turns}. */
  public static String turns(double turns) {
    String digits = String.format(Locale.ROOT, "%.2f", turns);
    return digits + (Math.abs(turns) <= 1 ? " turn" : " turns");
  }

  /** Travel with its 95 % half-width: {@code 0.25 ± 0.03 turn}. */
  public static String turns(double turns, double u95) {
    String unit = Math.abs(turns) <= 1 ? "turn" : "turns";
    return String.format(Locale.ROOT, "%.2f \u00b1 %s %s", turns, fine(u95), unit);
  }

  /** Travel in turns and in degrees of the handwheel: {@code 0.25 turn (90°)}. */
  public static String turnsAndDegrees(double turns) {
    return String.format(Locale.ROOT, "%s (%.0f\u00b0)", turns(turns), 360 * turns);
  }

  /** Per cent without needless digits. */
  public static String percent(double percent) {
    return String.format(Locale.ROOT, percent < 10 ? "%.2g" : "%.1f", percent);
  }

  /** Time: {@code 35 ms}, {@code 4.20 s}. */
  public static String seconds(double seconds) {
    return Math.abs(seconds) < 1
        ? String.format(Locale.ROOT, "%.0f ms", seconds * 1000)
        : String.format(Locale.ROOT, "%.1f s", seconds);
  }

  private static String fine(double u95) {
    return String.format(Locale.ROOT, u95 < 0.005 ? "%.3f" : "%.2f", u95);
  }
}
