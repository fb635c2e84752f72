package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts fit windows out of the ring of recent readings. Usually every reading is an observation of
 * equal weight. With an encoder coarser than its noise the readings are worthless one by one, but
 * the moment at which a count changes is known to within a scan: then the count edges are the
 * observations, each timed so that the time spent below and above the edge is kept (which sorts out
 * readings that flicker between two counts).
 */
final class WindowCutter {
  /**
   * Half-widths tried, widest first, for readings, s. The widest is that of the floor the accuracy
   * is measured against.
   */
  static final double[] HALF_WIDTHS_S = {0.5, 0.2, 0.08, 0.03};

  /** Half-widths tried for count edges, narrowest first, s. */
  private static final double[] EDGE_HALF_WIDTHS_S = {0.5, 1.0, 2.0};

  /** Runs of equal readings, or counts passed, in a second from which edges are many enough. */
  private static final int FEW = 20;

  private static final int WANTED_EDGES = 8;
  private static final double FINE_NOISE = 0.45;
  private static final int FEW_READINGS_A_COUNT = 2;
  private static final int MOST_RUN_POINTS = 16;

  /** Slices that readings are gathered into where there are several times as many. */
  private static final int SLICES_PER_S = 48;

  private static final int LEAST_SLICES = 24;

  private static final int READINGS_A_SLICE = 4;

  private final ReadingRing ring;
  private final NoiseGauge gauge;
  private final Rhythm rows;

  private final double[][] usualPriors = PathPrior.table(EDGE_HALF_WIDTHS_S[0]);

  WindowCutter(ReadingRing ring, NoiseGauge gauge, Rhythm rows) {
    this.ring = ring;
    this.gauge = gauge;
    this.rows = rows;
  }

  /**
   * Windows about an instant: the one to use first, then narrower ones to fall back on; empty
   * without readings.
   */
  List<FitWindow> cut(long centreNs) {
    if (ring.end() == 0) {
      return List.of();
    }
    double quantum = gauge.quantum();
    if (quantum > 0 && gauge.noise() < quantum && coarse(centreNs, quantum)) {
      return edges(centreNs, quantum);
    }
    List<FitWindow> windows = new ArrayList<>(HALF_WIDTHS_S.length + 1);
    for (double halfWidthS : HALF_WIDTHS_S) {
      windows.add(readings(centreNs, halfWidthS));
    }
    FitWindow.Reach moving = Kink.movingSide(windows.get(0));
    if (moving != FitWindow.Reach.BOTH_SIDES) {
      windows.add(readings(centreNs, moving, HALF_WIDTHS_S[0] / 2));
    }
    return windows;
  }

  /**
   * Whether a coarse encoder may pass so few counts about an instant that its window wants to be
   * longer.
   */
  boolean mayBeCoarse(long centreNs) {
    long run = ring.firstEndingAtOrAfter(centreNs - (long) (HALF_WIDTHS_S[0] * 1e9));
    if (ring.end() - run < FEW) {
      return true;
    }
    double quantum = gauge.quantum();
    if (!(gauge.noise() < quantum)) {
      return false;
    }
    double low = ring.value(run);
    double high = low;
    for (run++; run < ring.end() && high - low < FEW * quantum; run++) {
      low = Math.min(low, ring.value(run));
      high = Math.max(high, ring.value(run));
    }
    return high - low < FEW * quantum;
  }

  private FitWindow readings(long instantNs, double halfWidthS) {
    return readings(instantNs, FitWindow.Reach.BOTH_SIDES, halfWidthS);
  }

  private FitWindow readings(long instantNs, FitWindow.Reach reach, double halfWidthS) {
    long h = (long) (halfWidthS * 1e9);
    long centreNs = instantNs - (long) (reach.tau * h);
    long from = centreNs - h;
    long to = centreNs + h;
    long run = ring.firstEndingAtOrAfter(from);
    double origin = run < ring.end() ? ring.value(run) : 0;
    FitWindow window = new FitWindow(FitWindow.Kind.READINGS, reach, halfWidthS, origin);
    int most = Math.max(LEAST_SLICES, (int) (SLICES_PER_S * 2 * halfWidthS));
    boolean many = readings(from, to) / READINGS_A_SLICE >= most;
    Slices slices = new Slices(window, most);
    for (; run < ring.end() && ring.from(run) <= to; run++) {
      if (many && ring.count(run) <= READINGS_A_SLICE) {
        addTo(slices, run, from, to, centreNs, h);
      } else {
        addRun(window, run, from, to, centreNs, h);
      }
    }
    slices.flush();
    return window;
  }

  /** About how many readings lie in a stretch of time, runs counted once. */
  private long readings(long from, long to) {
    return ring.firstEndingAtOrAfter(to) - ring.firstEndingAtOrAfter(from);
  }

  private void addTo(Slices slices, long run, long from, long to, long centreNs, long h) {
    long begin = ring.from(run);
    int count = ring.count(run);
    double step = count == 1 ? 0 : (double) (ring.to(run) - begin) / (count - 1);
    for (int i = 0; i < count; i++) {
      double at = begin - centreNs + i * step;
      if (at >= from - centreNs && at <= to - centreNs) {
        slices.add(at / h, ring.value(run));
      }
    }
  }

  private void addRun(FitWindow window, long run, long from, long to, long centreNs, long h) {
    long begin = ring.from(run);
    long end = ring.to(run);
    int count = ring.count(run);
    if (count == 1 || end == begin) {
      if (begin >= from) {
        window.add((double) (begin - centreNs) / h, ring.value(run), count);
      }
      return;
    }
    double step = (double) (end - begin) / (count - 1);
    long first = Math.max(0, (long) Math.ceil((from - begin) / step));
    long last = Math.min(count - 1, (long) Math.floor((to - begin) / step));
    long n = last - first + 1;
    if (n <= 0) {
      return;
    }
    int points = (int) Math.min(n, MOST_RUN_POINTS);
    double weight = (double) n / points;
    for (int i = 0; i < points; i++) {
      double index = first + (i + 0.5) * weight - 0.5;
      window.add((begin - centreNs + index * step) / h, ring.value(run), weight);
    }
  }

  /**
   * Whether the readings about an instant dwell on counts: little noise, several readings a count.
   */
  private boolean coarse(long centreNs, double quantum) {
    long h = (long) (EDGE_HALF_WIDTHS_S[0] * 1e9);
    long run = ring.firstEndingAtOrAfter(centreNs - h);
    long readings = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double reference = ring.value(Math.min(run, ring.end() - 1));
    for (long r = run; r < ring.end() && ring.from(r) <= centreNs + h; r++) {
      readings += heldReadings(r, centreNs - h, centreNs + h);
      low = Math.min(low, ring.value(r));
      high = Math.max(high, ring.value(r));
      double counts = (ring.value(r) - reference) / quantum;
      if (Math.abs(counts - Math.rint(counts)) > 0.1) {
        return false;
      }
    }
    double levels = (high - low) / quantum + 1;
    if (readings < FEW_READINGS_A_COUNT * levels) {
      return false;
    }
    FitWindow window = readings(centreNs, EDGE_HALF_WIDTHS_S[0]);
    double speed = window.meanSpeed();
    double scale = Math.max(Math.abs(speed), quantum);
    WindowFit.Misfit free = WindowFit.leastBound(window, usualPriors, quantum / 3, scale);
    double spread = quantum / 3 * Math.sqrt(free.residual() / Math.max(1, free.freedom()));
    return spread < FINE_NOISE * quantum;
  }

  private long heldReadings(long run, long from, long to) {
    long begin = ring.from(run);
    long end = ring.to(run);
    if (end == begin) {
      return ring.count(run);
    }
    long inside = Math.min(end, to) - Math.max(begin, from);
    return Math.max(1, Math.round((double) ring.count(run) * inside / (end - begin)));
  }

  private List<FitWindow> edges(long centreNs, double quantum) {
    EdgeTimer timer =
        new EdgeTimer(
            ring,
            quantum,
            Math.max(1, rows.quantileNs(0.25)),
            gauge.noise() < 0.1 * quantum ? 2 : 3);
    int i = 0;
    while (true) {
      timer.read(centreNs, EDGE_HALF_WIDTHS_S[i]);
      if (i == EDGE_HALF_WIDTHS_S.length - 1 || timer.edgesOnEitherSide() >= WANTED_EDGES / 2) {
        break;
      }
      i++;
    }
    FitWindow wide = timer.window();
    FitWindow.Reach moving = timer.movingSide();
    timer.read(centreNs, EDGE_HALF_WIDTHS_S[i] / 2);
    FitWindow narrow = timer.window();
    if (moving == FitWindow.Reach.BOTH_SIDES) {
      return List.of(wide, narrow);
    }
    timer.read(centreNs, moving, EDGE_HALF_WIDTHS_S[i] / 2);
    return List.of(wide, narrow, timer.window());
  }
}
