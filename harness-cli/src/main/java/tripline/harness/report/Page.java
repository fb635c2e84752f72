package tripline.harness.report;

import java.io.PrintWriter;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.Ink.Tone;
import tripline.measure.Decision;

/**
 * A page of text, 79 columns wide: lines, tables, running text. All text from outside goes through
 * {@link #safe} before it is measured.
 */
final class Page {
  static final int WIDTH = 79;

  /** One cell of a table. */
  record Cell(String text, int columns, Tone tone) {}

  private final Glyphs glyphs;
  private final Ink ink;
  private final PrintWriter out;
  private final Rounded rounded;

  Page(TextStyle style, PrintWriter out) {
    this.glyphs = style.glyphs();
    this.ink = style.ink();
    this.out = out;
    this.rounded = new Rounded(glyphs.plusMinus());
  }

  Glyphs glyphs() {
    return glyphs;
  }

  Rounded rounded() {
    return rounded;
  }

  String degrees(double degrees) {
    return Figures.decimals(degrees, 0) + (glyphs == Glyphs.ASCII ? " deg" : "°");
  }

  /** Text from outside made harmless and writable with the glyphs of this page. */
  String safe(String text) {
    return glyphs == Glyphs.ASCII ? SafeText.ascii(text) : SafeText.line(text);
  }

  String fit(String text, int columns) {
    return Columns.fit(safe(text), columns, glyphs == Glyphs.ASCII ? "~" : "…");
  }

  /** A line of our own making. */
  void line(String text) {
    out.println(text.stripTrailing());
  }

  void blank() {
    out.println();
  }

  /** A line of cells, each but the last cut to its columns less one. */
  void row(Cell... cells) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < cells.length; i++) {
      Cell cell = cells[i];
      int gap = i < cells.length - 1 ? 1 : 0;
      String text = fit(cell.text(), cell.columns() - gap).stripTrailing();
      int fill = cell.columns() - Columns.width(text);
      line.append(ink.paint(cell.tone(), text));
      line.append(" ".repeat(fill));
    }
    line(line.toString());
  }

  /** Running text behind a label; further lines stand under the first one's text. */
  void labelled(String label, int columns, Tone tone, String text) {
    List<String> lines = Columns.wrap(safe(text), WIDTH - columns);
    for (int i = 0; i < lines.size(); i++) {
      String head = Columns.fit(i == 0 ? label : "", columns, "");
      String words = head.stripTrailing();
      line(ink.paint(tone, words) + head.substring(words.length()) + lines.get(i));
    }
  }

  static Cell cell(String text, int columns) {
    return new Cell(text, columns, Tone.BODY);
  }

  static Cell head(String text, int columns) {
    return new Cell(text, columns, Tone.HEAD);
  }

  static Cell decision(Decision decision, int columns) {
    return new Cell(word(decision), columns, tone(decision));
  }

  /** What was found before an adjustment: the figure and its decision. */
  static Cell found(@Nullable Double value, @Nullable Double u95, Decision decision, int columns) {
    String figure =
        value == null ? "-" : Figures.decimals(value, Rounded.decimals(u95 == null ? 0 : u95));
    return new Cell(figure + " " + word(decision), columns, tone(decision));
  }

  /** A decision in a table: capitals where somebody has to act. */
  static String word(Decision decision) {
    return switch (decision) {
      case ACCEPT -> "accept";
      case REJECT -> "REJECT";
      case UNDECIDED -> "undecided";
    };
  }

  static Tone tone(Decision decision) {
    return switch (decision) {
      case ACCEPT -> Tone.GOOD;
      case REJECT -> Tone.BAD;
      case UNDECIDED -> Tone.DOUBT;
    };
  }
}
