package tripline.reduce;

import org.jspecify.annotations.Nullable;

/**
 * How evenly the readings of a stretch are spaced.
 *
 * @param ns mean spacing, ns
 * @param jitter standard deviation of a reading's time about an even spacing, in spacings
 */
record ScanSpacing(double ns, double jitter) {
  /** Longest spacing, in usual ones, that is still that of neighbours. */
  private static final double MISSING = 1.5;

  /**
   * Spacing of the readings of some runs.
   *
   * @param usualNs spacing of the recording
   * @return null where readings are missing or too few
   */
  static @Nullable ScanSpacing of(ReadingRing ring, long firstRun, long lastRun, double usualNs) {
    long readings = ring.count(lastRun);
    for (long r = firstRun; r < lastRun; r++) {
      if (ring.from(r + 1) - ring.to(r) > MISSING * usualNs) {
        return null;
      }
      readings += ring.count(r);
    }
    double ns = (double) (ring.to(lastRun) - ring.from(firstRun)) / (readings - 1);
    if (firstRun == lastRun || !(ns > 0)) {
      return null;
    }
    double squares = 0;
    for (long r = firstRun; r < lastRun; r++) {
      double off = (ring.from(r + 1) - ring.to(r)) / ns - 1;
      squares += off * off;
    }
    // A distance holds the jitter of both its ends.
    return new ScanSpacing(ns, Math.sqrt(squares / 2 / (lastRun - firstRun)));
  }
}
