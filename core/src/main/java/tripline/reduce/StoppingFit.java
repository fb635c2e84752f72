package tripline.reduce;

/**
 * Finds where a move began to slow down and where it stood still: a straight line, then x = rest -
 * d (1 - tau)^p with no kink at the onset (speed v there, so the slowing takes T = p d / v), then
 * rest. p = 2 is constant deceleration, larger exponents die away slowly. Onset and exponent are
 * searched for by least squares; the uncertainty of the onset comes from how fast the misfit grows
 * about its least value (chi-square rises by one).
 */
final class StoppingFit implements MotionTracker.StopProbe {
  private static final double RUN_S = 0.7;
  private static final double LONGEST_STOP_S = 4.0;
  private static final int MOST_POINTS = 240;
  private static final int ONSETS = 40;
  private static final int FLANK_STEPS = 20;

  /**
   * Rise of the misfit that bounds the onset, in variances: more than one, for the law of the
   * slowing is not known.
   */
  private static final double FLANK = 12;

  private static final double[] EXPONENTS = {1.5, 2, 3, 4};

  private final ReadingRing ring;
  private final NoiseGauge gauge;

  private final double[] t = new double[MOST_POINTS];
  private final double[] y = new double[MOST_POINTS];
  private int n;
  private double rest;
  private double speed;
  private double level;

  /** The readings of the line: from, and up to but without. */
  private int lineFrom;

  private int lineTo;
  private double usualSquare;
  private double bestMisfit;
  private double bestOnset;
  private double bestExponent;
  private double bestSpeed;
  private double bestDistance;

  StoppingFit(ReadingRing ring, NoiseGauge gauge) {
    this.ring = ring;
    this.gauge = gauge;
  }

  @Override
  public Stopping look(
      long moveFromNs, long nowNs, long restFromNs, double restReading, double restU, int sign) {
    rest = restReading;
    long from = Math.max(moveFromNs, restFromNs - (long) ((RUN_S + LONGEST_STOP_S) * 1e9));
    load(from);
    double s = Math.max(gauge.noise(), gauge.quantum() / Math.sqrt(12));
    Stopping still = plain(restFromNs, s, restU);
    if (n < 12 || s <= 0) {
      return still;
    }
    usualSquare = s * s;
    double restS = (restFromNs - origin) * 1e-9;
    search(restS, sign);
    if (Double.isInfinite(bestMisfit)) {
      return still;
    }
    return found(s, restU, sign);
  }

  private long origin;

  /** Readings from {@code from} on, in order of time, thinned to what the search can afford. */
  private void load(long from) {
    origin = from;
    n = 0;
    long first = ring.firstEndingAtOrAfter(from);
    long readings = 0;
    for (long r = first; r < ring.end(); r++) {
      readings += ring.count(r) == 1 ? 1 : 2;
    }
    double stride = Math.max(1, readings / (double) (MOST_POINTS - 2));
    double next = 0;
    double seen = 0;
    for (long r = first; r < ring.end() && n < MOST_POINTS - 1; r++) {
      if (seen >= next) {
        add(ring.from(r), ring.value(r));
        next += stride;
      }
      seen++;
      if (ring.count(r) > 1) {
        if (seen >= next && n < MOST_POINTS - 1) {
          add(ring.to(r), ring.value(r));
          next += stride;
        }
        seen++;
      }
    }
  }

  private void add(long timeNs, double reading) {
    t[n] = (timeNs - origin) * 1e-9;
    y[n] = reading;
    n++;
  }

  private Stopping plain(long restFromNs, double s, double restU) {
    return new Stopping(
        -1, 0, Double.NaN, Double.NaN, restFromNs, 100_000_000, rest, Math.max(restU, s / 10), 0);
  }

  private void search(double restS, int sign) {
    bestMisfit = Double.POSITIVE_INFINITY;
    double last = Math.min(restS + 0.2, t[n - 1]);
    double first = Math.max(t[0] + 0.15, restS - LONGEST_STOP_S);
    scan(first, last, ONSETS, sign);
    double step = (last - first) / ONSETS;
    scan(bestOnset - step, bestOnset + step, 20, sign);
  }

  private void scan(double from, double to, int steps, int sign) {
    for (int i = 0; i <= steps; i++) {
      double onset = from + (to - from) * i / steps;
      if (!line(onset, sign)) {
        continue;
      }
      for (double exponent : EXPONENTS) {
        double misfit = misfit(onset, exponent);
        if (misfit < bestMisfit) {
          bestMisfit = misfit;
          bestOnset = onset;
          bestExponent = exponent;
          bestSpeed = speed;
          bestDistance = rest - level;
        }
      }
    }
  }

  /**
   * Sum of squares of the model with the given onset and exponent and the {@link #line} of that
   * onset.
   */
  private double misfit(double onset, double exponent) {
    double distance = rest - level;
    double lasts = exponent * distance / speed;
    // Readings the model does not reach are taken to scatter as usual, so that all onsets are
    // judged on as many.
    double sum = usualSquare * lineFrom;
    for (int i = lineFrom; i < lineTo; i++) {
      double off = y[i] - (level + speed * (t[i] - onset));
      sum += off * off;
    }
    for (int i = lineTo; i < n; i++) {
      double left = 1 - Math.min(1, (t[i] - onset) / lasts);
      double off = y[i] - (rest - distance * power(left, exponent));
      sum += off * off;
    }
    return sum;
  }

  /** {@link Math#pow}, some thousand times a stop: without a call of it for the exponents tried. */
  private static double power(double base, double exponent) {
    double square = base * base;
    if (exponent == 2) {
      return square;
    }
    if (exponent == 3) {
      return square * base;
    }
    if (exponent == 4) {
      return square * square;
    }
    return exponent == 1.5 ? base * Math.sqrt(base) : Math.pow(base, exponent);
  }

  /**
   * Straight line through the readings of the last {@value #RUN_S} s before an onset: speed, and
   * level at the onset. False where there is none, or it does not lead to the rest.
   */
  private boolean line(double onset, int sign) {
    double st = 0;
    double sy = 0;
    double stt = 0;
    double sty = 0;
    lineFrom = 0;
    while (lineFrom < n && t[lineFrom] - onset < -RUN_S) {
      lineFrom++;
    }
    lineTo = lineFrom;
    for (; lineTo < n && t[lineTo] - onset <= 0; lineTo++) {
      int i = lineTo;
      double dt = t[i] - onset;
      st += dt;
      sy += y[i] - rest;
      stt += dt * dt;
      sty += dt * (y[i] - rest);
    }
    int m = lineTo - lineFrom;
    double determinant = m * stt - st * st;
    if (m < 4 || !(determinant > 0)) {
      return false;
    }
    speed = (m * sty - st * sy) / determinant;
    level = rest + (sy - speed * st) / m;
    return speed * sign > 0 && (rest - level) * sign > 0;
  }

  private Stopping found(double s, double restU, int sign) {
    double s2 = Math.max(s * s, bestMisfit / Math.max(1, n - 4)) * dwell();
    double low = flank(-1, s2, sign);
    double high = flank(1, s2, sign);
    double onsetU = Math.max((high - low) / 2, usualGap() / Math.sqrt(12));
    double lasts = bestExponent * bestDistance / bestSpeed;
    // The tail of a slow death is below what can be seen: standstill is where the rest is reached
    // to within the noise.
    double unseen = dwell() > 1 ? gauge.quantum() : s;
    double visible =
        Math.min(1, Math.pow(unseen / Math.max(unseen, Math.abs(bestDistance)), 1 / bestExponent));
    double still = bestOnset + lasts * (1 - visible / 2);
    double stillU = Math.hypot(2 * onsetU, lasts * visible / 2 / Math.sqrt(3));
    double onsetReading = rest - bestDistance;
    return new Stopping(
        ns(bestOnset),
        (long) (onsetU * 1e9),
        onsetReading,
        Math.hypot(Math.abs(bestSpeed) * onsetU, s / 5),
        ns(still),
        (long) (stillU * 1e9),
        rest,
        restU,
        0);
  }

  /**
   * Readings that show one count again and again tell no more than one: how many of them stand for
   * one.
   */
  private double dwell() {
    double quantum = gauge.quantum();
    if (!(gauge.noise() < 0.5 * quantum)) {
      return 1;
    }
    double levels = Math.abs(y[n - 1] - y[0]) / quantum + 1;
    return Math.max(1, n / (2 * levels));
  }

  private long ns(double seconds) {
    return origin + Math.round(seconds * 1e9);
  }

  private double usualGap() {
    return n < 2 ? 0 : (t[n - 1] - t[0]) / (n - 1);
  }

  /**
   * The outermost onset to one side whose misfit is within one variance of the least; the misfit is
   * jagged, so look beyond.
   */
  private double flank(int side, double s2, int sign) {
    double outermost = bestOnset;
    double reach = Math.max(usualGap(), 2e-3);
    for (int i = 1; i <= FLANK_STEPS; i++) {
      double at = bestOnset + side * reach * i * (1 + 0.1 * i);
      double least = Double.POSITIVE_INFINITY;
      if (line(at, sign)) {
        for (double exponent : EXPONENTS) {
          least = Math.min(least, misfit(at, exponent));
        }
      }
      if (least - bestMisfit < FLANK * s2) {
        outermost = at;
      } else if (side * (at - outermost) > 0.15) {
        break;
      }
    }
    return outermost;
  }
}
