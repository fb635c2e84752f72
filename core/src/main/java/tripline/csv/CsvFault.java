package tripline.csv;

/**
 * Why a recording cannot be used.
 *
 * @param line line of the file, from 1
 * @param column character of that line, from 1
 * @param what what is wrong
 * @param expected what was expected instead, a clause that begins with "expected"
 */
public record CsvFault(long line, int column, String what, String expected) {
  /** What is wrong, what was expected: one line. */
  public String message() {
    return what + ", " + expected;
  }

  /** The fault as a user meets it: {@code file:line:column: what is wrong, what was expected}. */
  public String describe(String file) {
    return file + ":" + line + ":" + column + ": " + message();
  }
}
