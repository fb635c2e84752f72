package tripline.harness.summary;

/** A file that cannot be used as a result, from a byte on. */
final class UnusableResult extends Exception {
  private final int offset;

  UnusableResult(int offset, String problem) {
    super(problem);
    this.offset = offset;
  }

  /** No JSON from there on. */
  UnusableResult(int offset) {
    this(offset, "not JSON, expected a result file");
  }

  /** {@code line:column} in a file's bytes, both from 1. */
  String place(byte[] bytes) {
    int line = 1;
    int column = 1;
    for (int i = 0; i < offset; i++) {
      column = bytes[i] == '\n' ? 1 : column + 1;
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return line + ":" + column;
  }
}
