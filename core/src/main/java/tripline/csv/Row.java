package tripline.csv;

/**
 * One whole row of bytes, without its line end, and where it stands in the file.
 *
 * <p>Reused from row to row; knows how to say where in the file one of its bytes is.
 */
final class Row {
  private byte[] bytes = {};
  private int from;
  private int to;
  private long line;
  private byte eol;
  private boolean cutOff;

  /** Takes a row. {@code cutOff}: the file ended without a line end after it. */
  void set(byte[] bytes, int from, int to, long line, byte eol, boolean cutOff) {
    this.bytes = bytes;
    this.from = from;
    this.to = to;
    this.line = line;
    this.eol = eol;
    this.cutOff = cutOff;
  }

  byte[] bytes() {
    return bytes;
  }

  int from() {
    return from;
  }

  int to() {
    return to;
  }

  long line() {
    return line;
  }

  /** The byte that ends lines in this file. */
  byte eol() {
    return eol;
  }

  /** The file ended in this row: no line end came after it. */
  boolean cutOff() {
    return cutOff;
  }

  boolean isEmpty() {
    return from == to;
  }

  /** Line ends inside the row (within quotation marks). */
  int innerLines() {
    return innerLines(to);
  }

  private int innerLines(int before) {
    int n = 0;
    for (int i = from; i < before; i++) {
      if (bytes[i] == eol) {
        n++;
      }
    }
    return n;
  }

  /** A fault at one byte of the row. */
  Refused refuse(int at, String what, String expected) {
    int lineStart = at;
    while (lineStart > from && bytes[lineStart - 1] != eol) {
      lineStart--;
    }
    int column = 1 + Utf8.characters(bytes, lineStart, at);
    return new Refused(new CsvFault(line + innerLines(at), column, what, expected));
  }
}
