package tripline.reduce;

/**
 * Noise and count of the position readings, as they stream by. Noise from how far a reading lies
 * off the straight line between its neighbours (variance 1.5 s² for even spacing); the count as
 * stated, else the smallest step seen.
 */
final class NoiseGauge {
  private static final int EVERY = 8;

  /** Steps below this share of the reading are what binary fractions add to decimal ones. */
  private static final double RELATIVE_STEP = 1e-13;

  private final double statedQuantum;
  private double smallestStep = Double.POSITIVE_INFINITY;
  private double sum;
  private long count;
  private int phase;
  private long t0;
  private double x0;
  private long t1;
  private double x1;
  private double usualCount = 1;

  /**
   * @param statedQuantum one count, reading units; 0 = unknown
   */
  NoiseGauge(double statedQuantum) {
    this.statedQuantum = statedQuantum;
  }

  /** A reading. Hot: five of eight are left out, the rest is plenty. */
  void onReading(long timeNs, double reading) {
    if (phase < 3) {
      take(timeNs, reading);
    }
    phase = phase + 1 & EVERY - 1;
  }

  /** {@link #onReading} of each. */
  void add(QuietRows rows) {
    final long[] times = rows.times();
    final double[] readings = rows.readings();
    final int end = rows.end();
    int row = rows.from();
    while (row < end) {
      if (phase < 3) {
        take(times[row], readings[row]);
        phase++;
        row++;
      } else {
        int left = Math.min(EVERY - phase, end - row);
        phase = phase + left & EVERY - 1;
        row += left;
      }
    }
  }

  private void take(long timeNs, double reading) {
    if (phase == 0) {
      t0 = timeNs;
      x0 = reading;
    } else if (phase == 1) {
      t1 = timeNs;
      x1 = reading;
      step(Math.abs(x1 - x0));
    } else {
      triple(timeNs, reading);
    }
  }

  private void step(double step) {
    if (step < smallestStep && step > RELATIVE_STEP * (1 + Math.abs(x1))) {
      smallestStep = step;
    }
  }

  private void triple(long t2, double x2) {
    long span = t2 - t0;
    if (span <= 0) {
      return;
    }
    double w = (double) (t1 - t0) / span;
    double off = x1 - x0 - w * (x2 - x0);
    sum += off * off / (1 + w * w + (1 - w) * (1 - w));
    count++;
  }

  void onBlock(int readings) {
    usualCount += 0.1 * (readings - usualCount);
  }

  /** Readings in a usual block. */
  double usualCount() {
    return usualCount;
  }

  /** Standard deviation of a reading about its smooth path, what quantisation adds included. */
  double noise() {
    return count == 0 ? 0 : Math.sqrt(sum / count);
  }

  /** {@link #noise} less what a single jump of this size can have added. */
  double noiseBesides(double jump) {
    return count == 0 ? 0 : Math.sqrt(Math.max(0, sum - jump * jump / 6) / count);
  }

  /** One count; 0 where none has shown yet. */
  double quantum() {
    if (statedQuantum > 0) {
      return statedQuantum;
    }
    return Double.isInfinite(smallestStep) ? 0 : smallestStep;
  }

  /** Knows what another one of the same stated count knows. */
  void become(NoiseGauge other) {
    smallestStep = other.smallestStep;
    sum = other.sum;
    count = other.count;
    phase = other.phase;
    t0 = other.t0;
    x0 = other.x0;
    t1 = other.t1;
    x1 = other.x1;
    usualCount = other.usualCount;
  }
}
