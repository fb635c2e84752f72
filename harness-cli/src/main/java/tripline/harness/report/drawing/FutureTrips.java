package tripline.harness.report.drawing;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tripline.harness.report.FigureText;
import tripline.harness.report.StrokeNumbers;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.PointResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;

/**
 * Where the strokes of an acceptance say that future trips of a cam will fall, as deviations from
 * its target.
 *
 * @param mean of the strokes, turns
 * @param from lower end of the interval, turns
 * @param to upper end, turns
 * @param points strokes that count and those that do not
 * @param outlier the stroke that stands out
 */
record FutureTrips(
    double mean, double from, double to, List<PointResult> points, Optional<Outlier> outlier) {

  /** A stroke that stands out, and how far off it tripped. */
  record Outlier(int stroke, double deviation) {}

  /** Empty where the result is no acceptance, or has no interval for this cam. */
  static Optional<FutureTrips> of(Result result, CamResult cam) {
    AcceptanceResult accepted = result.acceptance();
    Double target = cam.target();
    if (accepted == null || target == null) {
      return Optional.empty();
    }
    return accepted.trips().stream()
        .filter(t -> t.cam().equals(cam.cam()) && Objects.equals(t.edge(), cam.edge()))
        .flatMap(t -> of(result, accepted, t, target).stream())
        .findFirst();
  }

  private static Optional<FutureTrips> of(
      Result result, AcceptanceResult accepted, AcceptedTrip trip, double target) {
    Double mean = trip.mean();
    Double from = trip.from();
    Double to = trip.to();
    if (mean == null || from == null || to == null) {
      return Optional.empty();
    }
    Optional<SeriesResult> series =
        accepted.series().stream()
            .filter(s -> s.contact().equals(trip.contact()))
            .filter(s -> s.direction().equals(trip.direction()))
            .filter(s -> Objects.equals(s.edge(), trip.edge()))
            .findFirst();
    Optional<OutlierResult> outlier =
        series.map(SeriesResult::outlier).filter(o -> o.grade().equals("outlier"));
    return Optional.of(
        new FutureTrips(
            mean - target,
            from - target,
            to - target,
            series.map(SeriesResult::points).orElse(List.of()),
            outlier.map(
                o ->
                    new Outlier(
                        StrokeNumbers.of(result, o.recording(), o.stroke()),
                        o.position() - target))));
  }

  /** Whether a change is of a full stroke. */
  boolean counts(ChangeResult change) {
    return points.stream()
        .anyMatch(
            p ->
                p.counted()
                    && p.recording() == change.recording()
                    && Objects.equals(p.stroke(), change.stroke()));
  }

  /** The farther end. */
  double reach() {
    return Math.max(Math.abs(from), Math.abs(to));
  }

  /** For the text alternative. */
  String words() {
    double half = (to - from) / 2;
    String stands =
        outlier
            .map(
                o ->
                    " Stroke %d stands out at %s."
                        .formatted(o.stroke(), FigureText.signed(o.deviation(), half / 10)))
            .orElse("");
    return " Future trips fall from %s to %s, mean %s.%s"
        .formatted(
            FigureText.signed(from, half),
            FigureText.signed(to, half),
            FigureText.signed(mean, half),
            stands);
  }
}
