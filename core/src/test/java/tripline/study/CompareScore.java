package tripline.study;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tripline.compare.CamMove;
import tripline.compare.Comparison;
import tripline.compare.EndMove;
import tripline.compare.Movement;
import tripline.compare.Seen;
import tripline.compare.TripMove;
import tripline.job.End;
import tripline.measure.Estimate;

/** How comparisons of pairs whose truth is known came out. */
final class CompareScore {
  /** Movements from this size on are counted as ones to be found, turns. */
  static final double GROSS_TURNS = 0.1;

  private static final double ROUNDING = 1e-9;

  int pairs;
  int unmovedPairs;
  int alarms;
  int trips;
  int tripsHeld;
  int unmovedTrips;
  int outside95;
  int against;
  int againstHeld;
  int backoffs;
  int backoffsHeld;
  int spans;
  int spansHeld;
  int lostMotions;
  int lostMotionsHeld;
  int gross;
  int grossFound;
  int small;
  int smallFound;
  int unmovedCams;
  int wronglyMoved;

  void add(ComparedPair pair) {
    Comparison seen = pair.comparison();
    Map<String, Double> moved = pair.moved();
    pairs++;
    boolean still = moved.values().stream().allMatch(m -> m == 0);
    if (still) {
      unmovedPairs++;
      alarms += seen.answer() == Seen.MOVED ? 1 : 0;
    }
    seen.trips().forEach(t -> trip(t, truth(moved, t.cam())));
    seen.cams().forEach(c -> cam(c, moved));
    for (End end : End.values()) {
      backoff(seen.end(end), truth(moved, end == End.CLOSED ? "close" : "open"));
    }
    seen.span()
        .by()
        .ifPresent(
            by -> {
              spans++;
              spansHeld += holds(by, 0) ? 1 : 0;
            });
    seen.lostMotion()
        .by()
        .ifPresent(
            by -> {
              lostMotions++;
              lostMotionsHeld += holds(by, 0) ? 1 : 0;
            });
  }

  void merge(CompareScore other) {
    pairs += other.pairs;
    unmovedPairs += other.unmovedPairs;
    alarms += other.alarms;
    trips += other.trips;
    tripsHeld += other.tripsHeld;
    unmovedTrips += other.unmovedTrips;
    outside95 += other.outside95;
    against += other.against;
    againstHeld += other.againstHeld;
    backoffs += other.backoffs;
    backoffsHeld += other.backoffsHeld;
    spans += other.spans;
    spansHeld += other.spansHeld;
    lostMotions += other.lostMotions;
    lostMotionsHeld += other.lostMotionsHeld;
    gross += other.gross;
    grossFound += other.grossFound;
    small += other.small;
    smallFound += other.smallFound;
    unmovedCams += other.unmovedCams;
    wronglyMoved += other.wronglyMoved;
  }

  private static double truth(Map<String, Double> moved, String cam) {
    return moved.getOrDefault(cam, Double.NaN);
  }

  private void trip(TripMove trip, double truth) {
    Optional<Estimate> by = trip.move().by();
    if (by.isPresent()) {
      trips++;
      tripsHeld += holds(by.get(), truth) ? 1 : 0;
      if (truth == 0) {
        unmovedTrips++;
        outside95 += holds(by.get(), 0) ? 0 : 1;
      }
    }
  }

  /** Against the others the truth is known where those that stayed did not move: most did not. */
  private void cam(CamMove cam, Map<String, Double> moved) {
    double truth = truth(moved, cam.after().cam());
    boolean alike = moved.values().stream().distinct().count() == 1;
    boolean othersStayed =
        moved.entrySet().stream()
            .allMatch(m -> m.getKey().equals(cam.after().cam()) || m.getValue() == 0);
    if (cam.againstOthers().isPresent() && (alike || othersStayed)) {
      against++;
      againstHeld += holds(cam.againstOthers().get(), alike ? 0 : truth) ? 1 : 0;
    }
    boolean found = cam.seen() == Seen.MOVED;
    if (Math.abs(truth) >= GROSS_TURNS) {
      gross++;
      grossFound += found ? 1 : 0;
    } else if (truth != 0) {
      small++;
      smallFound += found ? 1 : 0;
    } else if (!alike) {
      unmovedCams++;
      wronglyMoved += found ? 1 : 0;
    }
  }

  private void backoff(EndMove end, double truth) {
    Movement backoff = end.backoff();
    if (backoff.by().isPresent()) {
      backoffs++;
      double sign = end.end() == End.CLOSED ? 1 : -1;
      backoffsHeld += holds(backoff.by().get(), sign * truth) ? 1 : 0;
    }
  }

  private static boolean holds(Estimate by, double truth) {
    return Math.abs(by.value() - truth) <= by.expanded95() + ROUNDING;
  }

  /** Share of 95 % intervals of contacts' movements that hold the truth. */
  double coverage() {
    return (double) tripsHeld / trips;
  }

  double againstCoverage() {
    return (double) againstHeld / against;
  }

  double alarmShare() {
    return (double) alarms / unmovedPairs;
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%5d | contacts %s | against others %s | backoffs %s | span %s | lost motion %s | outside 95 %%, unmoved %s"
            + " | alarms %s | found gross %s small %s | wrongly %s",
        pairs,
        share(tripsHeld, trips),
        share(againstHeld, against),
        share(backoffsHeld, backoffs),
        share(spansHeld, spans),
        share(lostMotionsHeld, lostMotions),
        share(outside95, unmovedTrips),
        share(alarms, unmovedPairs),
        share(grossFound, gross),
        share(smallFound, small),
        share(wronglyMoved, unmovedCams));
  }

  private static String share(int some, int all) {
    return all == 0
        ? "     -      "
        : String.format(Locale.ROOT, "%5.1f %% of %d", 100.0 * some / all, all);
  }
}
