package tripline.reduce;

/**
 * Rows in the order they came that read the same contacts in the same states, gathered so that they
 * can be worked through together. Reused; fixed footprint: 16 bytes a row.
 */
final class RowBatch {
  static final int CAPACITY = 256;

  final long[] timeNs = new long[CAPACITY];
  final double[] reading = new double[CAPACITY];
  private int size;
  private long known;
  private long closed;

  /** Whether the batch takes another row of these contacts. */
  boolean takes(long rowKnown, long rowClosed) {
    return rowClosed == closed && rowKnown == known && size < CAPACITY;
  }

  /** Adds a row of the contacts the batch was begun with. */
  void add(long rowNs, double rowReading) {
    int at = size;
    timeNs[at] = rowNs;
    reading[at] = rowReading;
    size = at + 1;
  }

  /**
   * Adds as many rows as there is room for.
   *
   * @return how many
   */
  int add(long[] timesNs, double[] readings, int from, int to) {
    int rows = Math.min(to - from, CAPACITY - size);
    System.arraycopy(timesNs, from, timeNs, size, rows);
    System.arraycopy(readings, from, reading, size, rows);
    size += rows;
    return rows;
  }

  /** Begins anew, without rows. */
  void begin(long rowKnown, long rowClosed) {
    size = 0;
    known = rowKnown;
    closed = rowClosed;
  }

  int size() {
    return size;
  }

  /** Contacts that every row has read, as a mask. */
  long known() {
    return known;
  }

  /** Those of them that were closed. */
  long closed() {
    return closed;
  }
}
