package tripline.reduce;

/**
 * The distances between stamps, as counts over bins of a quarter octave: tells the usual distance,
 * the shortest usual one, and whether the stamps are regular. Fixed footprint, nothing allocated.
 */
final class Rhythm {
  private static final int BINS = 64 * 4;

  /** Share of the distances that are shorter than what counts as the scan. */
  private static final double SCAN_SHARE = 0.05;

  /** The scan is looked up again after this many distances at the latest. */
  private static final long RENEW = 1024;

  private final long[] count = new long[BINS];
  private final double[] sum = new double[BINS];
  private long total;
  private long renewAt;
  private long scanNs;

  void add(long distanceNs) {
    if (distanceNs <= 0) {
      return;
    }
    int bin = bin(distanceNs);
    count[bin]++;
    sum[bin] += distanceNs;
    total++;
  }

  private static int bin(long distanceNs) {
    int octave = 63 - Long.numberOfLeadingZeros(distanceNs);
    int quarter = octave < 2 ? 0 : (int) (distanceNs >>> (octave - 2)) & 3;
    return octave * 4 + quarter;
  }

  /** How many distances were added. */
  long total() {
    return total;
  }

  /**
   * Distance below which the given share (0..1) of the distances lies, ns; 0 where nothing was
   * added.
   */
  long quantileNs(double share) {
    if (total == 0) {
      return 0;
    }
    long wanted = Math.max(1, (long) Math.ceil(share * total));
    long seen = 0;
    for (int i = 0; i < BINS; i++) {
      seen += count[i];
      if (seen >= wanted) {
        return Math.round(sum[i] / count[i]);
      }
    }
    throw new IllegalStateException("counts do not add up to " + total);
  }

  /** The logger's scan: the smallest usual distance, ns. Cheap; may lag behind a little. */
  long scanNs() {
    if (total >= renewAt) {
      scanNs = quantileNs(SCAN_SHARE);
      renewAt = total + Math.min(RENEW, 1 + total / 8);
    }
    return scanNs;
  }

  /** The usual distance, ns. */
  long medianNs() {
    return quantileNs(0.5);
  }

  /** Nearly all distances are alike: the logger writes every sample. */
  boolean regular() {
    return total >= 20 && quantileNs(0.95) < 1.5 * quantileNs(0.10);
  }

  /** Stands where another one stands. */
  void become(Rhythm other) {
    System.arraycopy(other.count, 0, count, 0, BINS);
    System.arraycopy(other.sum, 0, sum, 0, BINS);
    total = other.total;
    renewAt = other.renewAt;
    scanNs = other.scanNs;
  }
}
