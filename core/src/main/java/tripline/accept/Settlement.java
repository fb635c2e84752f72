package tripline.accept;

import java.util.Optional;
import java.util.OptionalInt;
import tripline.measure.Decision;
import tripline.measure.Limits;
import tripline.measure.ToleranceInterval;

/**
 * What may be said of a trip point over its strokes, first of all whether anything may.
 *
 * @param decision accept, reject or undecided
 * @param reason why it is not accepted
 * @param strokesNeeded how many strokes in all would settle it; empty where none would
 */
record Settlement(Decision decision, Reason reason, OptionalInt strokesNeeded) {

  static Settlement of(
      TripAcceptance.Evidence seen,
      Optional<SeriesScatter> scatter,
      Optional<ToleranceInterval> interval,
      double guard) {
    int asked = seen.asked().strokes();
    if (!seen.trusted()) {
      return open(Reason.READINGS);
    }
    if (seen.limits().isEmpty()) {
      return open(Reason.NO_TARGET);
    }
    if (scatter.isEmpty()) {
      return open(Reason.NOT_SEEN, OptionalInt.of(asked));
    }
    if (interval.isEmpty()) {
      return open(Reason.FEW_STROKES, OptionalInt.of(asked));
    }
    Limits limits = seen.limits().orElseThrow();
    ToleranceInterval trips = interval.orElseThrow();
    OptionalInt needed = trips.tripsToDecide(limits, guard, TripAcceptance.MOST_STROKES);
    if (trips.n() < asked) {
      return open(Reason.FEW_STROKES, OptionalInt.of(Math.max(asked, needed.orElse(asked))));
    }
    double matters = TripAcceptance.SHARE_OF_TOLERANCE * 0.5 * (limits.upper() - limits.lower());
    if (Math.abs(scatter.orElseThrow().astray()) > matters) {
      return open(Reason.OUTLIER);
    }
    if (Math.abs(scatter.orElseThrow().moved(TripAcceptance.SIGNIFICANCE)) > matters) {
      return open(Reason.UNSTEADY);
    }
    return switch (trips.decide(limits, guard)) {
      case ACCEPT -> new Settlement(Decision.ACCEPT, Reason.NONE, OptionalInt.empty());
      case REJECT -> new Settlement(Decision.REJECT, Reason.OUTSIDE, OptionalInt.empty());
      case UNDECIDED ->
          room(trips, limits) <= guard ? open(Reason.COMMON) : open(Reason.SCATTER, needed);
    };
  }

  private static double room(ToleranceInterval trips, Limits limits) {
    return Math.min(trips.mean() - limits.lower(), limits.upper() - trips.mean());
  }

  private static Settlement open(Reason reason) {
    return open(reason, OptionalInt.empty());
  }

  private static Settlement open(Reason reason, OptionalInt needed) {
    return new Settlement(Decision.UNDECIDED, reason, needed);
  }
}
