package tripline.harness.summary;

/** A file that is no JSON, from a byte on. */
final class MalformedJson extends Exception {
  private final int offset;

  MalformedJson(int offset) {
    super("not JSON at byte " + offset);
    this.offset = offset;
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
