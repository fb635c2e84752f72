package tripline.study;

import java.util.Locale;
import java.util.Set;
import tripline.measure.Decision;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;

/** Tolerance intervals against the true law of the cams they speak of. */
final class AcceptanceScore {
  private static final Set<String> SCATTERING = Set.of("close", "half", "open");
  private static final Set<String> ON_THE_EDGE = Set.of("close", "open");

  int intervals;
  int held;
  int onTheEdge;
  int accepted;
  int without;

  void add(AcceptanceRun run) {
    AcceptanceResult result = run.result();
    for (AcceptedTrip trip : result.trips()) {
      if (!SCATTERING.contains(trip.cam())) {
        continue;
      }
      if (trip.from() == null || trip.strokes() != run.cell().strokes()) {
        without++;
        continue;
      }
      intervals++;
      held += run.heldShare(trip) >= run.cell().share() ? 1 : 0;
      if (ON_THE_EDGE.contains(trip.cam())) {
        onTheEdge++;
        accepted += trip.decision() == Decision.ACCEPT ? 1 : 0;
      }
    }
  }

  void merge(AcceptanceScore other) {
    intervals += other.intervals;
    held += other.held;
    onTheEdge += other.onTheEdge;
    accepted += other.accepted;
    without += other.without;
  }

  /** Share of intervals that hold the share of future trips they are meant to. */
  double confidence() {
    return (double) held / intervals;
  }

  /** Share of trip points exactly on the edge of conformity that were accepted. */
  double falselyAccepted() {
    return (double) accepted / onTheEdge;
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%9d %7d %9.1f %% %12.1f %%",
        intervals,
        without,
        100 * confidence(),
        100 * falselyAccepted());
  }
}
