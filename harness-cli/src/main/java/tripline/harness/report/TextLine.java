package tripline.harness.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import tripline.measure.Decision;

/** A line of cells for tables outside this package; text is made harmless as it comes in. */
public final class TextLine {
  private final Page page;
  private final List<Page.Cell> cells = new ArrayList<>();

  /** Lines in a style, to an output. */
  public TextLine(TextStyle style, PrintWriter out) {
    this.page = new Page(style, out);
  }

  /** A heading. */
  public TextLine head(String text, int columns) {
    cells.add(Page.head(text, columns));
    return this;
  }

  /** Text, cut to its columns less one. */
  public TextLine cell(String text, int columns) {
    cells.add(Page.cell(text, columns));
    return this;
  }

  /** A decision in its word, and in colour where there is any. */
  public TextLine decision(Decision decision, int columns) {
    cells.add(Page.decision(decision, columns));
    return this;
  }

  /** Writes the line and begins another. */
  public void end() {
    page.row(cells.toArray(Page.Cell[]::new));
    cells.clear();
  }

  /** A figure rounded to what its standard uncertainty supports. */
  public static String figure(double value, double u) {
    return Figures.decimals(value, Math.min(3, Rounded.decimals(u)));
  }
}
