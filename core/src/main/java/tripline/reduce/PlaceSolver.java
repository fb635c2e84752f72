package tripline.reduce;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tripline.measure.Shape;

/**
 * Positions at all the instants of a recording together. How much the path ripples is a property of
 * who or what drove it, so every window's evidence counts for all; and the noise of a reading is a
 * property of the logger. Each position is the mean over the candidates of {@link PathPrior},
 * weighted by their evidence; its variance includes how far the candidates disagree (model
 * averaging).
 */
final class PlaceSolver {
  /**
   * Weight of the other windows' joint evidence; the rest lets a window be unlike the others (a
   * pause, a stop).
   */
  private static final double SHARED = 0.9;

  /**
   * Exponent of that joint evidence: the windows of one crank are not independent trials of a law
   * that holds exactly.
   */
  private static final double TEMPER = 0.5;

  /**
   * What the candidates, being a coarse choice, leave out of the variance of a rippled path; found
   * by the accuracy study (intervals of hand strokes held 93 % without it).
   */
  private static final double RIPPLED_EXCESS = 0.15;

  /** The same where a dozen count edges are all there is to choose a candidate by (same study). */
  private static final double RIPPLED_EDGES_EXCESS = 0.3;

  private static final int ENOUGH_FREEDOM = 8;

  /**
   * The same where a window had to be narrowed: what bends there is followed less well (same
   * study).
   */
  private static final double NARROWED_EXCESS = 0.4;

  private final Map<Double, double[][]> priors = new HashMap<>();
  private final double quantum;
  private final double gaugedNoise;
  private double noise;
  private double edgeScale = 1;

  PlaceSolver(NoiseGauge gauge) {
    this.quantum = gauge.quantum();
    this.gaugedNoise = gauge.noise();
    this.noise = least(gaugedNoise);
  }

  /**
   * A reading is never better than a small part of its count, or than the digits it is computed
   * with.
   */
  private double least(double s) {
    double digits = quantum > 0 ? 0.05 * quantum : 1e-9;
    return Math.max(s, digits);
  }

  /** Standard deviation of a reading about the fitted paths; before {@link #solve} as gauged. */
  double noise() {
    return noise;
  }

  Place[] solve(List<Spot> spots) {
    noise = fittedNoise(spots);
    edgeScale = fittedEdgeScale(spots);
    int n = spots.size();
    @Nullable WindowFit[] fits = new WindowFit[n];
    for (int i = 0; i < n; i++) {
      fits[i] = WindowChoice.of(spots.get(i).windows(), window -> fit(window, noise));
    }
    double[] jointReadings = new double[PathPrior.CANDIDATES];
    double[] jointEdges = new double[PathPrior.CANDIDATES];
    for (WindowFit fit : fits) {
      if (fit != null) {
        add(
            fit.window.kind == FitWindow.Kind.READINGS ? jointReadings : jointEdges,
            fit.logEvidence,
            1);
      }
    }
    Place[] places = new Place[n];
    for (int i = 0; i < n; i++) {
      WindowFit fit = fits[i];
      places[i] =
          fit == null
              ? fallback(spots.get(i))
              : place(fit, fit.window.kind == FitWindow.Kind.READINGS ? jointReadings : jointEdges);
    }
    return places;
  }

  /** The vote of a window, or of one less: one that is unlike the others says nothing of them. */
  private static void add(double[] sum, double[] term, double sign) {
    double best = Arrays.stream(term).max().orElse(0);
    for (int c = 0; c < sum.length; c++) {
      sum[c] += sign * Math.log(SHARED * Math.exp(term[c] - best) + 1 - SHARED);
    }
  }

  private double fittedNoise(List<Spot> spots) {
    double[] variances = new double[spots.size()];
    int count = 0;
    double start = least(gaugedNoise);
    for (Spot spot : spots) {
      if (spot.windows().isEmpty() || spot.windows().get(0).kind != FitWindow.Kind.READINGS) {
        continue;
      }
      WindowFit fit = fit(spot.windows().get(0), start);
      WindowFit.Misfit left = fit.misfit(fit.best());
      if (left.freedom() >= ENOUGH_FREEDOM) {
        variances[count++] = start * start * left.perFreedom();
      }
    }
    if (count == 0) {
      return start;
    }
    return least(Math.sqrt(median(variances, count)));
  }

  /**
   * How much worse count edges scatter than their scan and flicker explain (an uneven scale, unseen
   * noise), at least 1. The median, for one window may hold a kink.
   */
  private double fittedEdgeScale(List<Spot> spots) {
    double[] squares = new double[spots.size()];
    double freedom = 0;
    int count = 0;
    for (Spot spot : spots) {
      if (!spot.windows().isEmpty() && spot.windows().get(0).kind == FitWindow.Kind.COUNT_EDGES) {
        WindowFit fit = fit(spot.windows().get(0), noise);
        WindowFit.Misfit left = fit.misfit(fit.best());
        if (left.freedom() > 1) {
          squares[count++] = left.perFreedom();
          freedom += left.freedom();
        }
      }
    }
    return freedom < ENOUGH_FREEDOM ? 1 : Math.sqrt(Math.max(1, median(squares, count)));
  }

  private static double median(double[] values, int count) {
    Arrays.sort(values, 0, count);
    return count % 2 == 1 ? values[count / 2] : (values[count / 2 - 1] + values[count / 2]) / 2;
  }

  private WindowFit fit(FitWindow window, double s) {
    double unit = window.kind == FitWindow.Kind.READINGS ? s : edgeScale;
    double slowest = window.kind == FitWindow.Kind.READINGS ? s : quantum;
    double[][] table = priors.computeIfAbsent(window.halfWidthS, PathPrior::table);
    return new WindowFit(
        window, table, unit, Math.max(Math.abs(window.meanSpeed()), slowest / window.halfWidthS));
  }

  private Place fallback(Spot spot) {
    double nearest = spot.windows().isEmpty() ? Double.NaN : spot.windows().get(0).nearest;
    if (Double.isNaN(nearest)) {
      return Place.UNKNOWN;
    }
    return new Place(
        nearest,
        Math.max(noise, quantum / Math.sqrt(12)),
        Shape.NORMAL,
        0,
        Double.POSITIVE_INFINITY,
        1);
  }

  private Place place(WindowFit fit, double[] joint) {
    double[] weight = weights(fit, joint);
    double value = 0;
    double speed = 0;
    for (int c = 0; c < weight.length; c++) {
      value += weight[c] * (fit.value[c] - fit.window.origin);
      speed += weight[c] * fit.speed[c];
    }
    double variance = 0;
    double speedVariance = 0;
    for (int c = 0; c < weight.length; c++) {
      double off = fit.value[c] - fit.window.origin - value;
      double speedOff = fit.speed[c] - speed;
      variance += weight[c] * (fit.variance[c] + off * off);
      speedVariance += weight[c] * (fit.speedVariance[c] + speedOff * speedOff);
    }
    double misfit = fit.excess() * (1 + unmodelled(fit, weight));
    double u = Math.sqrt(variance * misfit);
    double speedU = Math.sqrt(speedVariance * misfit);
    double fitted = value + fit.window.origin;
    if (fit.window.kind == FitWindow.Kind.COUNT_EDGES && offCount(fitted, u, fit.window.nearest)) {
      return new Place(
          fit.window.nearest,
          quantum / Math.sqrt(12),
          Shape.RECTANGULAR,
          speed,
          speedU,
          fit.window.points);
    }
    return new Place(fitted, u, Shape.NORMAL, speed, speedU, fit.window.points);
  }

  /**
   * A coarse encoder shows the count the position lies in: a fit that leaves it, or knows less than
   * it, is not used.
   */
  private boolean offCount(double value, double u, double shown) {
    return !Double.isNaN(shown)
        && (u > quantum / Math.sqrt(12)
            || Math.abs(value - shown) > 0.6 * quantum + 3 * gaugedNoise);
  }

  private static double[] weights(WindowFit fit, double[] joint) {
    double[] others = joint.clone();
    add(others, fit.logEvidence, -1);
    for (int c = 0; c < others.length; c++) {
      others[c] = TEMPER * others[c] + PathPrior.logShare(c);
    }
    normalise(others);
    double[] weight = new double[others.length];
    for (int c = 0; c < weight.length; c++) {
      double prior = SHARED * others[c] + (1 - SHARED) * Math.exp(PathPrior.logShare(c));
      weight[c] = Math.log(prior) + fit.logEvidence[c];
    }
    normalise(weight);
    return weight;
  }

  /** Share of the variance that the candidates leave out. */
  private static double unmodelled(WindowFit fit, double[] weight) {
    double straight = 0;
    for (int c = 0; c <= PathPrior.STEADIEST; c++) {
      straight += weight[c];
    }
    boolean narrowed =
        fit.window.reach == FitWindow.Reach.BOTH_SIDES
            && fit.window.halfWidthS < WindowCutter.HALF_WIDTHS_S[0];
    double rippled =
        fit.window.kind == FitWindow.Kind.READINGS ? RIPPLED_EXCESS : RIPPLED_EDGES_EXCESS;
    return narrowed ? NARROWED_EXCESS : rippled * (1 - straight);
  }

  /** Logarithms to shares that add up to one. */
  private static void normalise(double[] log) {
    double best = Arrays.stream(log).max().orElse(0);
    double sum = 0;
    for (int c = 0; c < log.length; c++) {
      log[c] = Math.exp(log[c] - best);
      sum += log[c];
    }
    for (int c = 0; c < log.length; c++) {
      log[c] /= sum;
    }
  }
}
