package tripline.accept;

import java.util.Optional;
import tripline.measure.Drift;
import tripline.measure.Grubbs;
import tripline.measure.Moments;
import tripline.measure.Repeatability;
import tripline.measure.Step;

/**
 * How one series of trips scatters and whether it stays.
 *
 * @param moments mean, standard deviation, extremes
 * @param leastSd what the measurement alone makes it scatter, turns
 * @param grubbs the trip farthest from the mean; empty below three trips
 * @param farthest how far that trip lies from the mean of the others, turns; 0 below three trips
 * @param drift straight drift over stroke number; empty where no scatter is known to judge it by
 * @param step most significant step; empty as {@code drift}
 */
public record SeriesScatter(
    Moments moments,
    double leastSd,
    Optional<Grubbs> grubbs,
    double farthest,
    Optional<Drift> drift,
    Optional<Step> step) {
  private static final int FEWEST = 3;

  /**
   * Scatter of a series of at least one trip.
   *
   * @param back the same trip point in the other direction: its scatter about its own line is of
   *     the same cam and gear, and with three strokes each way there would be one degree of freedom
   *     without it
   */
  public static SeriesScatter of(TripSeries series, Optional<TripSeries> back) {
    double[] values = series.values();
    double least = series.leastSd();
    Repeatability known = back.map(SeriesScatter::aboutItsLine).orElse(Repeatability.UNKNOWN);
    boolean enough = values.length >= FEWEST;
    Optional<Grubbs> grubbs = enough ? Optional.of(Grubbs.of(values, least)) : Optional.empty();
    Moments moments = series.moments();
    return new SeriesScatter(
        moments,
        least,
        grubbs,
        grubbs.map(g -> fromTheOthers(values[g.index()], moments)).orElse(0.0),
        enough ? Optional.of(Drift.of(values, known, least)) : Optional.empty(),
        enough ? Optional.of(Step.of(values, known, least)) : Optional.empty());
  }

  private static double fromTheOthers(double value, Moments moments) {
    return (value - moments.mean()) * moments.n() / (moments.n() - 1);
  }

  private static Repeatability aboutItsLine(TripSeries series) {
    int n = series.n();
    if (n < FEWEST) {
      return Repeatability.UNKNOWN;
    }
    Drift drift = Drift.of(series.values());
    return new Repeatability(drift.residualSd() * Math.sqrt(n / (n - 2.0)), n - 2);
  }

  /** Grade of the trip farthest from the mean. */
  public OutlierGrade outlier() {
    return grubbs.map(OutlierGrade::of).orElse(OutlierGrade.NONE);
  }

  /** How far an outlier lies from the mean of the other trips, turns; 0 where there is none. */
  double astray() {
    return outlier() == OutlierGrade.OUTLIER ? farthest : 0;
  }

  /** Repeatability standard deviation with its degrees of freedom; unknown from one trip. */
  public Repeatability repeatability() {
    return Repeatability.of(moments);
  }

  /**
   * How far it moved over its strokes, by a drift or a step, whichever leaves less scatter; 0 where
   * scatter explains it at this significance.
   *
   * @param significance chance of as much by scatter alone that is put up with
   * @return turns, + toward open
   */
  double moved(double significance) {
    if (drift.isEmpty() || step.isEmpty()) {
      return 0;
    }
    Drift line = drift.orElseThrow();
    Step jump = step.orElseThrow();
    double run = line.probability() < significance ? line.perStroke() * (moments.n() - 1) : 0;
    double hop = jump.probability() < significance ? jump.size() : 0;
    if (run != 0 && hop != 0) {
      return line.residualSd() <= jump.residualSd() ? run : hop;
    }
    return run != 0 ? run : hop;
  }
}
