package tripline.harness.watch;

import java.util.Locale;
import tripline.harness.report.Glyphs;
import tripline.harness.report.SafeText;
import tripline.job.Direction;
import tripline.job.End;

/** Figures and names as the screen says them, with the signs the terminal has. */
record Speech(Glyphs glyphs) {
  /** Text from outside made harmless. */
  String safe(String text) {
    return glyphs == Glyphs.ASCII ? SafeText.ascii(text) : SafeText.line(text);
  }

  /** Our own text with the signs this terminal has. */
  String own(String text) {
    return glyphs == Glyphs.ASCII ? SafeText.ascii(text) : text;
  }

  /** {@code 0.32 turn (115°)}, {@code 1.82 turns (1 turn + 295°)}. */
  String both(double turns) {
    return turns(turns) + " (" + counted(turns) + ")";
  }

  /** {@code 0.32 turn}, {@code 1.82 turns}. */
  static String turns(double turns) {
    return decimals(turns, 2) + (Math.abs(turns) <= 1 ? " turn" : " turns");
  }

  /** As a hand counts: {@code 115°}, {@code 1 turn + 295°}, {@code 3 turns + 18°}. */
  private String counted(double turns) {
    long degrees = Math.round(360 * turns);
    long whole = degrees / 360;
    String rest = degrees % 360 + glyphs.degree();
    return whole == 0 ? rest : whole + (whole == 1 ? " turn + " : " turns + ") + rest;
  }

  /** The same for a table: {@code 1 + 295°}. */
  String brief(double turns) {
    long degrees = Math.round(360 * turns);
    long whole = degrees / 360;
    String rest = degrees % 360 + glyphs.degree();
    return whole == 0 ? rest : whole + " + " + rest;
  }

  /** So many decimals; nothing is ever a negative nought. */
  static String decimals(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.startsWith("-") && text.matches("[-0.]+") ? text.substring(1) : text;
  }

  static String toward(Direction direction) {
    return toward(direction.toward());
  }

  static String toward(End end) {
    return "toward " + end.word();
  }

  /** {@code CLOSED END}. */
  static String end(End end) {
    return end.word().toUpperCase(Locale.ROOT) + " END";
  }
}
