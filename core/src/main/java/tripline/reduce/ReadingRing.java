package tripline.reduce;

/**
 * The most recent position readings, equal neighbours held as one run. A coarse or resting encoder
 * costs a few runs a second, a noisy one a run a reading; {@value #CAPACITY} runs hold more than
 * the longest window a local fit wants at 8 kHz. Fixed footprint: 28 bytes a run.
 */
final class ReadingRing {
  static final int CAPACITY = 1 << 15;
  private static final int MASK = CAPACITY - 1;

  private final long[] from = new long[CAPACITY];
  private final long[] to = new long[CAPACITY];
  private final double[] value = new double[CAPACITY];
  private final int[] count = new int[CAPACITY];
  private long pushed;

  /** Takes a reading that differs from the one before it. */
  void add(long timeNs, double reading) {
    int at = (int) pushed & MASK;
    from[at] = timeNs;
    to[at] = timeNs;
    value[at] = reading;
    count[at] = 1;
    pushed++;
  }

  /**
   * Takes readings, of which some may equal the one before. Hot: what each reading asks for is
   * local.
   */
  void add(QuietRows rows) {
    final long[] times = rows.times();
    final double[] readings = rows.readings();
    final long[] from = this.from;
    final double[] value = this.value;
    final int[] count = this.count;
    final int end = rows.end();
    int at = (int) (pushed - 1) & MASK;
    double newest = value[at];
    int repeats = 0;
    for (int row = rows.from(); row < end; row++) {
      double reading = readings[row];
      if (reading == newest) {
        to[at] = times[row];
        count[at]++;
        repeats++;
      } else {
        at = at + 1 & MASK;
        from[at] = times[row];
        to[at] = times[row];
        value[at] = reading;
        count[at] = 1;
        newest = reading;
      }
    }
    pushed += rows.rows() - repeats;
  }

  /** Takes a reading equal to the one before it. */
  void repeat(long timeNs) {
    int last = (int) (pushed - 1) & MASK;
    to[last] = timeNs;
    count[last]++;
  }

  /**
   * States that the newest reading held until {@code untilNs}: a logger that writes only changes
   * was silent.
   *
   * @param readings how many readings the silence stands for
   */
  void hold(long untilNs, int readings) {
    int last = (int) (pushed - 1) & MASK;
    if (untilNs > to[last]) {
      to[last] = untilNs;
      count[last] += readings;
    }
  }

  /** Number of the oldest run still held. */
  long oldest() {
    return Math.max(0, pushed - CAPACITY);
  }

  /** One past the number of the newest run. */
  long end() {
    return pushed;
  }

  long from(long run) {
    return from[(int) run & MASK];
  }

  long to(long run) {
    return to[(int) run & MASK];
  }

  double value(long run) {
    return value[(int) run & MASK];
  }

  int count(long run) {
    return count[(int) run & MASK];
  }

  /** Number of the first run that ends at or after a time; {@link #end()} where none does. */
  long firstEndingAtOrAfter(long timeNs) {
    long low = oldest();
    long high = pushed;
    while (low < high) {
      long middle = (low + high) >>> 1;
      if (to(middle) < timeNs) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Holds what another one holds. */
  void become(ReadingRing other) {
    int held = (int) Math.min(CAPACITY, other.pushed);
    System.arraycopy(other.from, 0, from, 0, held);
    System.arraycopy(other.to, 0, to, 0, held);
    System.arraycopy(other.value, 0, value, 0, held);
    System.arraycopy(other.count, 0, count, 0, held);
    pushed = other.pushed;
  }
}
