package tripline.reduce;

import org.jspecify.annotations.Nullable;

/**
 * Times the count edges of a coarse encoder over a stretch of one-way motion. For each edge between
 * two counts the time is placed so that the time spent at or below the lower count is kept (while
 * rising; above it while falling): exact for clean readings, unbiased for readings that flicker
 * between two counts. Long dwells on a count are stated as well, as what they are: within half a
 * count.
 */
final class EdgeTimer {
  private static final double DWELL_S = 0.15;
  private static final double DWELL_SPACING_S = 0.1;
  private static final int MOST_DWELL_POINTS = 8;
  private static final double MOST_SCANS_APART = 4;
  private static final double MOST_COUNTS_APART = 64;

  /**
   * Variance of the edge time of a flickering reading: v dt s / sqrt(pi), the integral of p(1-p)
   * over the flicker.
   */
  static final double FLICKER = 1 / Math.sqrt(Math.PI);

  /** Time on the wrong side of an edge in units of s/v: the mean of |z| for a normal z. */
  private static final double WRONG_SIDE = Math.sqrt(2 / Math.PI);

  /**
   * An edge is timed right only if all its flicker lies within the stretch: so many standard
   * deviations of the noise from its ends.
   */
  private static final double FLICKER_SIGMAS = 2.5;

  private final ReadingRing ring;
  private final double quantum;
  private final double scanNs;
  private final int turnBack;

  private long instantNs;
  private FitWindow.Reach reach = FitWindow.Reach.BOTH_SIDES;

  /** Half the most that the stretch may reach, ns. */
  private long h;

  /**
   * Begin and end of the stretch, from the instant (stamps of a calendar fill a double's digits).
   */
  private long fromNs;

  private long toNs;
  private long first;
  private long last;
  private int sign;
  private double[] spent = new double[0];
  private long lowest;
  private int before;
  private int after;

  /**
   * @param turnBack counts by which a path must go back to count as having turned round
   */
  EdgeTimer(ReadingRing ring, double quantum, double scanNs, int turnBack) {
    this.turnBack = turnBack;
    this.ring = ring;
    this.quantum = quantum;
    this.scanNs = scanNs;
  }

  private long level(long run) {
    return Math.round((ring.value(run) - ring.value(first)) / quantum);
  }

  /** Finds the one-way stretch about an instant, at most {@code halfWidthS} to either side. */
  void read(long instant, double halfWidthS) {
    read(instant, FitWindow.Reach.BOTH_SIDES, halfWidthS);
  }

  /**
   * Finds the one-way stretch about an instant, or on one side of it.
   *
   * @param halfWidthS half the most it may reach
   */
  void read(long instant, FitWindow.Reach to, double halfWidthS) {
    instantNs = instant;
    reach = to;
    h = (long) (halfWidthS * 1e9);
    long earliest = -h - (long) (reach.tau * h);
    long latest = h - (long) (reach.tau * h);
    long middle = Math.min(ring.firstEndingAtOrAfter(instant), ring.end() - 1);
    first = middle;
    while (first > ring.oldest() && ring.to(first - 1) >= instant + earliest) {
      first--;
    }
    last = middle;
    while (last + 1 < ring.end() && ring.from(last + 1) <= instant + latest) {
      last++;
    }
    long net = level(last);
    sign = net >= 0 ? 1 : -1;
    trim(middle);
    fromNs = Math.max(earliest, ring.from(first) - instant);
    toNs = Math.min(latest, ring.to(last) - instant);
    tally();
  }

  /** Shortens the stretch to where the path does not turn back by two counts or more. */
  private void trim(long middle) {
    long base = level(middle);
    long extreme = base;
    long r = middle;
    while (r < last && !brokenAfter(r) && sign * (level(r + 1) - extreme) > -turnBack) {
      r++;
      extreme = sign > 0 ? Math.max(extreme, level(r)) : Math.min(extreme, level(r));
    }
    long newLast = r;
    extreme = base;
    r = middle;
    while (r > first && !brokenAfter(r - 1) && sign * (extreme - level(r - 1)) > -turnBack) {
      r--;
      extreme = sign > 0 ? Math.min(extreme, level(r)) : Math.max(extreme, level(r));
    }
    first = r;
    last = newLast;
  }

  /** Readings are missing between a run and the next, or jumped: no edge can be timed across. */
  private boolean brokenAfter(long run) {
    return ring.from(run + 1) - ring.to(run) > MOST_SCANS_APART * scanNs
        || Math.abs(ring.value(run + 1) - ring.value(run)) > MOST_COUNTS_APART * quantum;
  }

  private double boundaryAfter(long run) {
    return run == last ? toNs : (ring.to(run) - instantNs + (ring.from(run + 1) - instantNs)) / 2.0;
  }

  /** Sums the time spent on each count. */
  private void tally() {
    lowest = Long.MAX_VALUE;
    long highest = Long.MIN_VALUE;
    for (long r = first; r <= last; r++) {
      lowest = Math.min(lowest, level(r));
      highest = Math.max(highest, level(r));
    }
    int levels = (int) Math.min(highest - lowest + 1, 1 << 20);
    spent = new double[levels];
    double begin = fromNs;
    for (long r = first; r <= last; r++) {
      double end = boundaryAfter(r);
      spent[(int) (level(r) - lowest)] += Math.max(0, end - begin);
      begin = Math.max(begin, end);
    }
    before = 0;
    after = 0;
    double at = fromNs;
    for (int k = 0; k < edges(); k++) {
      at += spent[index(k)];
      if (at < 0) {
        before++;
      } else {
        after++;
      }
    }
  }

  private int edges() {
    return spent.length - 1;
  }

  /** Index into {@link #spent} of the k-th count in order of motion. */
  private int index(int k) {
    return sign > 0 ? k : spent.length - 1 - k;
  }

  /** The smaller of the numbers of edges before and after the instant. */
  int edgesOnEitherSide() {
    return Math.min(before, after);
  }

  /** The side with by far the more edges, where the other is that of a stop or a start. */
  FitWindow.Reach movingSide() {
    return Kink.movingSide(before, after);
  }

  /** The window of the stretch last read. */
  FitWindow window() {
    double base = ring.value(first) + lowest * quantum;
    FitWindow window = new FitWindow(FitWindow.Kind.COUNT_EDGES, reach, h * 1e-9, base);
    window.nearest = ring.value(nearest());
    double speed =
        edges() < 2 ? 0 : edges() * quantum / Math.max(scanNs, (double) (toNs - fromNs)) * 1e9;
    double noise = flicker(speed);
    double step = speed * scanNs * 1e-9;
    double least = 1e-8 * quantum * quantum;
    double phase = step > 0 ? step * step / 12 * SamplingBeat.remains(noise / step) : 0;
    double variance = Math.max(phase + FLICKER * step * noise, least);
    double cutOff = speed > 0 ? FLICKER_SIGMAS * noise / speed * 1e9 : 0;
    double weight = 1 / variance;
    eachEdge(cutOff, (k, tau) -> window.add(tau, base + (index(k) + 0.5 * sign) * quantum, weight));
    int timed = window.points;
    addDwells(window, base);
    if (timed > 2 && timed == window.points) {
      window.beat = beat(Math.abs(window.meanSpeed()), noise, cutOff, weight);
    }
    return window;
  }

  /** Calls for each edge whose flicker, {@code cutOffNs} wide, lies within the stretch. */
  private void eachEdge(double cutOffNs, EdgeSink sink) {
    double at = fromNs;
    for (int k = 0; k < edges(); k++) {
      at += spent[index(k)];
      if (at - fromNs >= cutOffNs && toNs - at >= cutOffNs) {
        sink.onEdge(k, at / h + reach.tau);
      }
    }
  }

  /** Takes the k-th edge in order of motion and its time in half-widths from the middle. */
  private interface EdgeSink {
    void onEdge(int k, double tau);
  }

  private @Nullable SamplingBeat beat(double speed, double noise, double cutOffNs, double weight) {
    ScanSpacing scan = ScanSpacing.of(ring, first, last, scanNs);
    if (scan == null || !(speed > 0)) {
      return null;
    }
    double step = speed * scan.ns() * 1e-9;
    SamplingBeat beat = new SamplingBeat(quantum / step, step, noise, scan.jitter(), weight);
    double[] p = new double[FitWindow.TERMS];
    eachEdge(
        cutOffNs,
        (k, tau) -> {
          Legendre.values(tau, p, FitWindow.TERMS);
          beat.add(k, p);
        });
    return beat;
  }

  private long nearest() {
    long run = Math.min(ring.firstEndingAtOrAfter(instantNs), ring.end() - 1);
    boolean earlier =
        run > ring.oldest() && instantNs - ring.to(run - 1) < ring.from(run) - instantNs;
    return earlier ? run - 1 : run;
  }

  /** Noise of the reading from how long it shows the count on the wrong side of an edge. */
  private double flicker(double speed) {
    double[] edgeAt = new double[spent.length + 1];
    edgeAt[0] = fromNs;
    for (int k = 0; k < spent.length; k++) {
      edgeAt[k + 1] = edgeAt[k] + spent[index(k)];
    }
    double wrong = 0;
    double begin = fromNs;
    for (long r = first; r <= last; r++) {
      double end = boundaryAfter(r);
      int k = index((int) (level(r) - lowest));
      double inside = Math.max(0, Math.min(end, edgeAt[k + 1]) - Math.max(begin, edgeAt[k]));
      wrong += Math.max(0, end - begin - inside);
      begin = Math.max(begin, end);
    }
    return edges() < 1 ? 0 : wrong / edges() * 1e-9 * speed / WRONG_SIDE;
  }

  private void addDwells(FitWindow window, double base) {
    double usual = edges() < 1 ? Double.POSITIVE_INFINITY : (double) (toNs - fromNs) / spent.length;
    double at = fromNs;
    for (int k = 0; k < spent.length; k++) {
      double dwell = spent[index(k)];
      boolean only = spent.length <= 2;
      if (dwell > DWELL_S * 1e9 && (only || dwell > 2.5 * usual)) {
        int points =
            (int) Math.max(1, Math.min(MOST_DWELL_POINTS, dwell / (DWELL_SPACING_S * 1e9)));
        for (int i = 0; i < points; i++) {
          double t = at + dwell * (i + 0.5) / points;
          window.add(t / h + reach.tau, base + index(k) * quantum, 12 / (quantum * quantum));
        }
      }
      at += dwell;
    }
  }
}
