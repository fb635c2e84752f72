package tripline.csv;

/**
 * Takes a row apart into cells (RFC 4180 clause 2): quotation marks around a cell, doubled ones
 * inside it, blanks are data.
 */
final class Cells {
  private static final byte QUOTE = '"';

  private final byte separator;
  private final Row row;
  private byte[] unquoted = new byte[64];
  private int at;
  private boolean more;
  private int count;
  private int start;
  private byte[] text = {};
  private int from;
  private int to;

  Cells(byte separator, Row row) {
    this.separator = separator;
    this.row = row;
  }

  /** Stands before the first cell of the row. */
  void begin() {
    at = row.from();
    more = true;
    count = 0;
  }

  /**
   * Goes to the next cell.
   *
   * @return false if there is none
   * @throws Refused if the cell is not properly quoted, or holds a byte no cell may hold
   */
  boolean next() throws Refused {
    if (!more) {
      return false;
    }
    count++;
    start = at;
    if (at < row.to() && row.bytes()[at] == QUOTE) {
      quoted();
    } else {
      unquoted();
    }
    more = at < row.to();
    at++;
    return true;
  }

  /** How many cells have been read of this row. */
  int count() {
    return count;
  }

  /** Where in the row the cell begins, its quotation mark included. */
  int start() {
    return start;
  }

  /** The array that holds the text of this cell, until the next one is read. */
  byte[] text() {
    return text;
  }

  int from() {
    return from;
  }

  int to() {
    return to;
  }

  /** A fault of this cell. */
  Refused refuse(String what, String expected) {
    return row.refuse(start, what, expected);
  }

  /** Drops blanks at either end, for cells that hold a number or a word. */
  void trim() {
    while (from < to && blank(text[from])) {
      from++;
    }
    while (from < to && blank(text[to - 1])) {
      to--;
    }
  }

  private static boolean blank(byte b) {
    return b == ' ' || b == '\t';
  }

  private void unquoted() throws Refused {
    byte[] bytes = row.bytes();
    int end = row.to();
    int p = at;
    while (p < end && bytes[p] != separator) {
      byte b = bytes[p];
      if (b == QUOTE) {
        throw row.refuse(
            p,
            "quotation mark inside an unquoted cell",
            "expected the whole cell in quotation marks and this one doubled");
      }
      if (b == 0) {
        throw nul(p);
      }
      if (b == '\r' || b == '\n') {
        throw row.refuse(
            p,
            b == '\r' ? "carriage return inside a row" : "line feed inside a row",
            "expected the same line end throughout the file");
      }
      p++;
    }
    text = bytes;
    from = at;
    to = p;
    at = p;
  }

  private void quoted() throws Refused {
    byte[] bytes = row.bytes();
    int end = row.to();
    int p = at + 1;
    int n = 0;
    if (unquoted.length < end - p) {
      unquoted = new byte[end - p];
    }
    while (true) {
      if (p == end) {
        throw row.refuse(
            at, "quotation mark is never closed", "expected another one at the end of the cell");
      }
      byte b = bytes[p++];
      if (b == QUOTE) {
        if (p == end || bytes[p] != QUOTE) {
          break;
        }
        p++;
      } else if (b == 0) {
        throw nul(p - 1);
      }
      unquoted[n++] = b;
    }
    if (p < end && bytes[p] != separator) {
      throw row.refuse(
          p,
          "text after the closing quotation mark",
          "expected " + Utf8.shown(String.valueOf((char) separator)) + " or the end of the row");
    }
    text = unquoted;
    from = 0;
    to = n;
    at = p;
  }

  private Refused nul(int p) {
    return row.refuse(p, "NUL byte", "expected text in UTF-8");
  }
}
