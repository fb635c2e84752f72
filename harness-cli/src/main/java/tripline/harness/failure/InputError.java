package tripline.harness.failure;

/**
 * One thing wrong with one input.
 *
 * @param file the input as the user named it
 * @param line 1-based line, 0 where the whole file is meant
 * @param column 1-based column in characters, 0 where the whole line is meant
 * @param problem what is wrong and what was expected, on one line, no full stop
 */
public record InputError(String file, long line, long column, String problem) {
  /**
   * Refuses a position that could not be.
   *
   * @throws IllegalArgumentException for a negative line or column, or a column without its line
   */
  public InputError {
    if (line < 0 || column < 0 || (line == 0 && column > 0)) {
      throw new IllegalArgumentException("no such place: " + line + ":" + column);
    }
  }

  /** Something wrong with a file as a whole. */
  public InputError(String file, String problem) {
    this(file, 0, 0, problem);
  }

  /** {@code file:line:column: problem}, without the parts that are not known. */
  @Override
  public String toString() {
    String place =
        line == 0 ? file : column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    return place + ": " + problem;
  }
}
