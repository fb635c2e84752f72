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
  private final long[] sumNs = new long[BINS];
  private long total;

  /** Distances not yet counted in a bin: the newest one, so often in a row. */
  private long runNs;

  private long run;
  private long renewAt;
  private long scanNs;

  /** A distance; 0 is none. */
  void add(long distanceNs) {
    add(distanceNs, 1);
  }

  /** So many equal distances; 0 is none. Hot: mostly the same as the one before. */
  void add(long distanceNs, int times) {
    if (distanceNs != runNs) {
      endRun();
      runNs = distanceNs;
    }
    run += times;
  }

  private void endRun() {
    if (runNs > 0) {
      int bin = bin(runNs);
      count[bin] += run;
      sumNs[bin] += run * runNs;
      total += run;
    }
    run = 0;
  }

  private static int bin(long distanceNs) {
    int octave = 63 - Long.numberOfLeadingZeros(distanceNs);
    int quarter = octave < 2 ? 0 : (int) (distanceNs >>> (octave - 2)) & 3;
    return octave * 4 + quarter;
  }

  /** How many distances were added. */
  long total() {
    return runNs > 0 ? total + run : total;
  }

  /**
   * Distance below which the given share (0..1) of the distances lies, ns; 0 where nothing was
   * added.
   */
  long quantileNs(double share) {
    endRun();
    if (total == 0) {
      return 0;
    }
    long wanted = Math.max(1, (long) Math.ceil(share * total));
    long seen = 0;
    for (int i = 0; i < BINS; i++) {
      seen += count[i];
      if (seen >= wanted) {
        return Math.round((double) sumNs[i] / count[i]);
      }
    }
    throw new IllegalStateException("counts do not add up to " + total);
  }

  /** The logger's scan: the smallest usual distance, ns. Cheap; may lag behind a little. */
  long scanNs() {
    if (total() >= renewAt) {
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
    return total() >= 20 && quantileNs(0.95) < 1.5 * quantileNs(0.10);
  }

  /** Stands where another one stands. */
  void become(Rhythm other) {
    System.arraycopy(other.count, 0, count, 0, BINS);
    System.arraycopy(other.sumNs, 0, sumNs, 0, BINS);
    runNs = other.runNs;
    run = other.run;
    total = other.total;
    renewAt = other.renewAt;
    scanNs = other.scanNs;
  }
}
