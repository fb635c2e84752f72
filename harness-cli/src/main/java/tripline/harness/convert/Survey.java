package tripline.harness.convert;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** What the rows of a recording need: digits of their readings, and where time begins. */
final class Survey implements SampleSink {
  /** Digits after the point that a reading may have to be kept exactly. */
  static final int MOST_DIGITS = 9;

  private static final double[] TENS = {1, 10, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

  /** Far below a count, far above what a double makes of a decimal number of fifteen digits. */
  private static final double EXACT = 1e-5;

  private long firstNs = Long.MAX_VALUE;
  private long rows;
  private double largest;
  private int digits;
  private boolean positions;

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    rows++;
    firstNs = Math.min(firstNs, timeNs);
    if (!Double.isNaN(reading)) {
      positions = true;
      largest = Math.max(largest, Math.abs(reading));
      while (digits < MOST_DIGITS && !isWhole(reading * TENS[digits])) {
        digits++;
      }
    }
  }

  private static boolean isWhole(double value) {
    return Math.abs(value - Math.rint(value)) < EXACT;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    firstNs = Math.min(firstNs, timeNs);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    firstNs = Math.min(firstNs, timeNs);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}

  /** Rows in all. */
  long rows() {
    return rows;
  }

  /** The earliest stamp, ns. */
  long firstNs() {
    return firstNs;
  }

  /** Whether a row has a reading. */
  boolean hasPositions() {
    return positions;
  }

  /** Counts a unit, a power of ten: so many that no reading loses a digit and each fits 32 bits. */
  long countsPerUnit() {
    int fitting = digits;
    while (fitting > 0 && largest * TENS[fitting] > Integer.MAX_VALUE - 1) {
      fitting--;
    }
    return (long) TENS[fitting];
  }

  /** Whether every reading is kept as it is. */
  boolean exact() {
    return countsPerUnit() == (long) TENS[digits] && largest <= Integer.MAX_VALUE - 1;
  }
}
