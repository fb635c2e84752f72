package tripline.csv;

import java.util.Arrays;

/** What plain cells are in a layout, and what may stand between them. */
final class PlainCells {
  private final byte separator;
  private final byte eol;
  private final boolean[] ends = new boolean[256];

  PlainCells(byte separator, byte eol) {
    this.separator = separator;
    this.eol = eol;
    Arrays.fill(ends, 0, ' ', true);
    ends[separator] = true;
    ends['"'] = true;
  }

  /** Where the cell ends: at a separator, a line end, or a byte that no plain cell holds. */
  int end(byte[] bytes, int from) {
    int p = from;
    while (!ends[bytes[p] & 0xFF]) {
      p++;
    }
    return p;
  }

  /** Passes what must stand after a cell of a row, or -1. */
  int after(byte[] bytes, int p, boolean lastCell) {
    byte b = bytes[p];
    if (!lastCell) {
      return b == separator ? p + 1 : -1;
    }
    if (b == eol) {
      return p + 1;
    }
    return b == '\r' && bytes[p + 1] == eol ? p + 2 : -1;
  }
}
