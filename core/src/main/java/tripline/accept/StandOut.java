package tripline.accept;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tripline.measure.Drift;
import tripline.measure.Grubbs;
import tripline.measure.Sides;
import tripline.measure.Step;

/**
 * Something about a series that a reader should look at. Every test is made of every series, and by
 * chance alone one in a hundred says something; what is named here matters against the tolerance,
 * or is beyond the chance of so many series together.
 *
 * @param series whose
 * @param kind what
 * @param turns how far the outlier lies from the other trips, how far the trips moved from first to
 *     last, or how far they stepped; + toward open
 * @param chance of as much by scatter alone, 0 to 1, of this series; of an outlier only that it is
 *     below {@link OutlierGrade#OUTLIER_ALPHA}
 */
public record StandOut(TripSeries series, Kind kind, double turns, double chance) {
  /** What stands out. */
  public enum Kind {
    OUTLIER,
    DRIFT,
    STEP;

    /** As the result writes it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** A movement has to be this many times what the measurement alone scatters. */
  private static final double SIGNIFICANT_U = 3;

  /** All that stands out of these series, in their order. */
  static List<StandOut> of(List<TripSeries> series, List<TripAcceptance> trips) {
    List<StandOut> found = new ArrayList<>();
    for (TripSeries one : series) {
      if (one.n() > 0) {
        SeriesScatter scatter = SeriesScatter.of(one, one.back(series));
        Weighing weighing = new Weighing(one, scatter, series.size(), matters(one, trips));
        weighing.outlier().ifPresent(found::add);
        weighing.movement().ifPresent(found::add);
      }
    }
    return List.copyOf(found);
  }

  /** What matters against the narrowest tolerance of the cam, turns. */
  private static double matters(TripSeries series, List<TripAcceptance> trips) {
    String cam = series.contact().contact().cam();
    double tolerance =
        trips.stream()
            .map(TripAcceptance::target)
            .filter(t -> t.cam().equals(cam))
            .mapToDouble(t -> t.toleranceTurns().orElse(Double.POSITIVE_INFINITY))
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    return TripAcceptance.SHARE_OF_TOLERANCE * tolerance;
  }

  private record Weighing(TripSeries series, SeriesScatter scatter, int looks, double matters) {
    Optional<StandOut> outlier() {
      double away = scatter.astray();
      if (away == 0) {
        return Optional.empty();
      }
      Grubbs test = scatter.grubbs().orElseThrow();
      double alpha = OutlierGrade.OUTLIER_ALPHA / looks;
      boolean told =
          Math.abs(away) > matters || test.g() > Grubbs.critical(test.n(), alpha, Sides.TWO);
      return told
          ? Optional.of(new StandOut(series, Kind.OUTLIER, away, OutlierGrade.OUTLIER_ALPHA))
          : Optional.empty();
    }

    Optional<StandOut> movement() {
      if (scatter.drift().isEmpty() || scatter.step().isEmpty()) {
        return Optional.empty();
      }
      Drift line = scatter.drift().orElseThrow();
      Step jump = scatter.step().orElseThrow();
      double run = line.perStroke() * (series.n() - 1);
      boolean drifts = tells(run, line.probability());
      boolean steps = tells(jump.size(), jump.probability());
      if (drifts && (!steps || line.probability() <= jump.probability())) {
        return Optional.of(new StandOut(series, Kind.DRIFT, run, line.probability()));
      }
      return steps
          ? Optional.of(new StandOut(series, Kind.STEP, jump.size(), jump.probability()))
          : Optional.empty();
    }

    private boolean tells(double turns, double chance) {
      double size = Math.abs(turns);
      double allowed = size > matters ? 1 : 1.0 / looks;
      return size > SIGNIFICANT_U * scatter.leastSd()
          && chance < allowed * TripAcceptance.SIGNIFICANCE;
    }
  }
}
