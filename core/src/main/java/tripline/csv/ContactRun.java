package tripline.csv;

import java.util.Arrays;

/**
 * Neighbouring contact columns, read as one.
 *
 * <p>A run whose bytes equal those of the row before is not read again: contacts seldom change. A
 * mark among them is plain only while it is empty.
 */
final class ContactRun {
  private final PlainCells cells;
  private final ContactWords words;

  /** Bit of each column of the run; 0 for a mark. */
  private final long[] bits;

  private final boolean toEndOfRow;
  private int lastAt;
  private int lastLength;
  private long known;
  private long closed;

  /**
   * @param bits bit of each column, 0 for a mark
   * @param toEndOfRow the last column of the run is the last of the row
   */
  ContactRun(PlainCells cells, ContactWords words, long[] bits, boolean toEndOfRow) {
    this.cells = cells;
    this.words = words;
    this.bits = bits;
    this.toEndOfRow = toEndOfRow;
  }

  /** The bytes of the row before are gone. */
  void forget() {
    lastLength = 0;
  }

  /** Channels read, as a mask. */
  long known() {
    return known;
  }

  /** Those of them that are closed. */
  long closed() {
    return closed;
  }

  /** Reads the run, with the separator or line end after it; where it ends, or -1 if not plain. */
  int read(final byte[] bytes, final int from, final int limit) {
    final int length = lastLength;
    final int at = lastAt;
    if (length > 0
        && length <= limit - from
        && Arrays.equals(bytes, from, from + length, bytes, at, at + length)) {
      lastAt = from;
      return from + length;
    }
    return changed(bytes, from);
  }

  private int changed(byte[] bytes, int from) {
    lastLength = 0;
    known = 0;
    closed = 0;
    int p = from;
    for (int c = 0; c < bits.length; c++) {
      final int begin = p;
      p = cells.end(bytes, p);
      if (p > begin) {
        int state = bits[c] == 0 ? ContactWords.NEITHER : words.state(bytes, begin, p);
        if (state == ContactWords.NEITHER) {
          return -1;
        }
        known |= bits[c];
        closed |= state == ContactWords.CLOSED ? bits[c] : 0;
      }
      p = cells.after(bytes, p, toEndOfRow && c == bits.length - 1);
      if (p < 0) {
        return -1;
      }
    }
    lastAt = from;
    lastLength = p - from;
    return p;
  }
}
