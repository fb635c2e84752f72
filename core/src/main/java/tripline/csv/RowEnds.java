package tripline.csv;

/**
 * Finds where rows end, in however many pieces the file comes.
 *
 * <p>A line end inside quotation marks ends no row, except on a metadata line, where quotation
 * marks mean nothing. The first line decides what ends lines in this file: a line feed (alone or
 * after a carriage return), or a carriage return alone.
 */
final class RowEnds {
  static final int NONE = Integer.MIN_VALUE;

  private byte eol;
  private boolean atStart = true;
  private boolean quoted;
  private boolean metadata;
  private boolean returnSeen;
  private boolean headerSeen;

  /** The byte that ends lines; a line feed until the first line has ended. */
  byte eol() {
    return eol == 0 ? (byte) '\n' : eol;
  }

  /** From here on {@code #} means nothing. */
  void headerSeen() {
    headerSeen = true;
  }

  /** The next byte is the first of a row. */
  void begin() {
    atStart = true;
    quoted = false;
    metadata = false;
  }

  /** The bytes so far end inside quotation marks. */
  boolean quoted() {
    return quoted;
  }

  /**
   * Looks for the end of the row that was begun.
   *
   * @return index of the byte that ends it; {@code from - 1} if that was the last byte of the piece
   *     before; {@link #NONE} if the row goes on after this piece
   */
  int find(byte[] bytes, int from, int to) {
    int p = from;
    if (p == to) {
      return NONE;
    }
    if (returnSeen) {
      returnSeen = false;
      eol = (byte) (bytes[p] == '\n' ? '\n' : '\r');
      return eol == '\n' ? p : p - 1;
    }
    if (atStart) {
      atStart = false;
      metadata = !headerSeen && bytes[p] == '#';
    }
    boolean inside = quoted;
    for (; p < to; p++) {
      byte b = bytes[p];
      if (b == '"') {
        inside ^= !metadata;
      } else if ((b == '\n' || b == '\r') && !inside && ends(bytes, p, to)) {
        quoted = false;
        return returnSeen ? NONE : eol == '\n' && b == '\r' ? p + 1 : p;
      }
    }
    quoted = inside;
    return NONE;
  }

  private boolean ends(byte[] bytes, int p, int to) {
    if (eol != 0) {
      return bytes[p] == eol;
    }
    if (bytes[p] == '\n') {
      eol = '\n';
    } else if (p + 1 < to) {
      eol = (byte) (bytes[p + 1] == '\n' ? '\n' : '\r');
    } else {
      returnSeen = true;
    }
    return true;
  }
}
