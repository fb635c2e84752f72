package tripline.harness.terminal;

import java.io.PrintWriter;

/**
 * One line at the bottom of the terminal that is written over and over, and lines that stay above
 * it. Where there is no terminal only those that stay are written.
 */
public final class ProgressLine implements AutoCloseable {
  private static final int USUAL_COLUMNS = 80;

  private final PrintWriter out;
  private final boolean terminal;
  private final int columns;
  private int shown;

  private ProgressLine(PrintWriter out, boolean terminal, int columns) {
    this.out = out;
    this.terminal = terminal;
    this.columns = columns;
  }

  /** On standard error, if that is a terminal: the launcher says so. */
  public static ProgressLine ofProcess(PrintWriter errors) {
    boolean terminal = Boolean.getBoolean("tripline.terminal.errors");
    int columns = terminal ? Terminal.columns().orElse(USUAL_COLUMNS) : USUAL_COLUMNS;
    return new ProgressLine(errors, terminal, columns);
  }

  /** For a terminal of so many columns. */
  static ProgressLine on(PrintWriter out, int columns) {
    return new ProgressLine(out, true, columns);
  }

  /** Writes over what was shown; cut to the width. */
  public void show(String text) {
    if (terminal) {
      String cut = text.length() < columns ? text : text.substring(0, columns - 1);
      out.print("\r" + cut + " ".repeat(Math.max(0, shown - cut.length())));
      out.flush();
      shown = cut.length();
    }
  }

  /** A line that stays. */
  public void say(String text) {
    show("");
    out.println((terminal ? "\r" : "") + text);
    shown = 0;
  }

  /** Takes the line away. */
  @Override
  public void close() {
    show("");
    if (terminal) {
      out.print("\r");
      out.flush();
    }
  }
}
