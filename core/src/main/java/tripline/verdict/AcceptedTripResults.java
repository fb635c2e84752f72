package tripline.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import tripline.accept.Reason;
import tripline.accept.TripAcceptance;
import tripline.accept.TripSeries;
import tripline.assess.TripTarget;
import tripline.measure.Estimate;
import tripline.measure.Limits;
import tripline.measure.Moments;
import tripline.measure.ToleranceInterval;
import tripline.measure.TwoDirections;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.BothResult;
import tripline.result.Result.PartResult;

/** Trip points over their strokes as the result writes them. */
final class AcceptedTripResults {
  private AcceptedTripResults() {}

  static AcceptedTrip of(TripAcceptance trip) {
    TripTarget target = trip.target();
    Optional<TripSeries> series = trip.series();
    Optional<Moments> moments = series.filter(s -> s.n() > 0).map(TripSeries::moments);
    Optional<ToleranceInterval> interval = trip.interval();
    @Nullable Double x = Figures.value(target.x());
    @Nullable Double mean = moments.map(Moments::mean).orElse(null);
    @Nullable Double half = Figures.number(trip.halfWidth());
    return new AcceptedTrip(
        target.cam(),
        target.edge().word().orElse(null),
        series.map(s -> s.contact().contact().name()).orElse(null),
        target.from().approach().word(),
        trip.required(),
        series.map(TripSeries::n).orElse(0),
        series.map(s -> s.aside().size()).orElse(0),
        mean,
        moments.filter(m -> m.n() > 1).map(Moments::sd).orElse(null),
        x,
        Figures.number(target.toleranceTurns()),
        plus(x, trip.limits().map(Limits::lower).orElse(null)),
        plus(x, trip.limits().map(Limits::upper).orElse(null)),
        interval.map(ToleranceInterval::factor).orElse(null),
        interval.map(ToleranceInterval::halfWidth).orElse(null),
        trip.common().isPresent() ? trip.guard() : null,
        trip.common().map(AcceptedTripResults::parts).orElse(List.of()),
        plus(mean, half == null ? null : -half),
        plus(mean, half),
        trip.decision(),
        trip.reason() == Reason.NONE ? null : trip.reason().word(),
        integer(trip.strokesNeeded()),
        Figures.number(trip.supportedShare()),
        trip.both().map(AcceptedTripResults::both).orElse(null));
  }

  private static List<PartResult> parts(Estimate common) {
    return Figures.measured(common).parts();
  }

  private static BothResult both(TwoDirections two) {
    return new BothResult(two.reversal(), two.uReversal(), two.repeatability());
  }

  private static @Nullable Double plus(@Nullable Double a, @Nullable Double b) {
    return a == null || b == null ? null : a + b;
  }

  private static @Nullable Integer integer(OptionalInt number) {
    return number.isPresent() ? number.getAsInt() : null;
  }
}
