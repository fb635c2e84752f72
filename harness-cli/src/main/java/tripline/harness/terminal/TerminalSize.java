package tripline.harness.terminal;

/** Room on a terminal. */
public record TerminalSize(int columns, int rows) {
  /** What a terminal has that does not say. */
  public static final TerminalSize USUAL = new TerminalSize(80, 24);

  private static final int MOST = 1000;

  /** No size is absurd, whatever a terminal says. */
  public TerminalSize {
    columns = Math.max(1, Math.min(MOST, columns));
    rows = Math.max(1, Math.min(MOST, rows));
  }

  /** That of the terminal on standard input; {@link #USUAL} where it does not say. */
  public static TerminalSize ofProcess() {
    return Terminal.size().orElse(USUAL);
  }
}
