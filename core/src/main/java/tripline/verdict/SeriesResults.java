package tripline.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.accept.OutlierGrade;
import tripline.accept.SeriesScatter;
import tripline.accept.StandOut;
import tripline.accept.TripSeries;
import tripline.assess.Crossing;
import tripline.measure.Grubbs;
import tripline.measure.Moments;
import tripline.measure.Repeatability;
import tripline.measure.Sides;
import tripline.result.AcceptanceResult.DriftResult;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.PointResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.AcceptanceResult.StandOutResult;
import tripline.result.AcceptanceResult.StepResult;

/** Trips stroke by stroke as the result writes them. */
final class SeriesResults {
  /** Repeatability limit for a standard deviation of 1. */
  static final double LIMIT_FACTOR = new Repeatability(1, Double.POSITIVE_INFINITY).limit();

  private SeriesResults() {}

  static List<SeriesResult> of(List<TripSeries> all) {
    return all.stream().map(s -> of(s, s.back(all))).toList();
  }

  private static SeriesResult of(TripSeries series, Optional<TripSeries> back) {
    Optional<SeriesScatter> scatter =
        series.n() > 0 ? Optional.of(SeriesScatter.of(series, back)) : Optional.empty();
    Optional<Moments> several = scatter.map(SeriesScatter::moments).filter(m -> m.n() > 1);
    return new SeriesResult(
        series.contact().contact().name(),
        series.contact().contact().cam(),
        series.edge().word().orElse(null),
        series.direction().word(),
        series.n(),
        scatter.map(s -> s.moments().mean()).orElse(null),
        several.map(Moments::sd).orElse(null),
        several.map(Moments::range).orElse(null),
        several.map(m -> LIMIT_FACTOR * m.sd()).orElse(null),
        several.map(m -> series.leastSd()).orElse(null),
        points(series),
        scatter.flatMap(SeriesScatter::grubbs).map(g -> outlier(series, g)).orElse(null),
        scatter
            .flatMap(SeriesScatter::drift)
            .map(d -> new DriftResult(d.perStroke(), d.u(), d.dof(), d.probability()))
            .orElse(null),
        scatter
            .flatMap(SeriesScatter::step)
            .map(s -> new StepResult(s.after(), s.size(), s.u(), s.dof(), s.probability()))
            .orElse(null));
  }

  static StandOutResult of(StandOut found) {
    TripSeries series = found.series();
    return new StandOutResult(
        found.kind().word(),
        series.contact().contact().name(),
        series.contact().contact().cam(),
        series.edge().word().orElse(null),
        series.direction().word(),
        found.turns(),
        found.chance());
  }

  private static List<PointResult> points(TripSeries series) {
    List<PointResult> points = new ArrayList<>();
    series.counted().forEach(c -> points.add(point(c, true)));
    series.aside().forEach(c -> points.add(point(c, false)));
    points.sort(
        Comparator.comparingInt(PointResult::recording).thenComparingInt(PointResult::stroke));
    return List.copyOf(points);
  }

  private static PointResult point(Crossing crossing, boolean counted) {
    return new PointResult(
        crossing.trip().recording(), crossing.trip().stroke(), crossing.x().value(), counted);
  }

  private static @Nullable OutlierResult outlier(TripSeries series, Grubbs grubbs) {
    Crossing farthest = series.counted().get(grubbs.index());
    return new OutlierResult(
        farthest.trip().recording(),
        farthest.trip().stroke(),
        farthest.x().value(),
        grubbs.g(),
        Grubbs.critical(grubbs.n(), OutlierGrade.STRAGGLER_ALPHA, Sides.TWO),
        Grubbs.critical(grubbs.n(), OutlierGrade.OUTLIER_ALPHA, Sides.TWO),
        OutlierGrade.of(grubbs).word());
  }
}
