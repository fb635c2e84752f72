package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import tripline.develop.Trip;

/**
 * Settled changes of one channel that follow each other so closely that one event made them: a
 * contact that chatters longer than it takes to count as settled.
 *
 * @param trips in order of time, at least one; an odd count is a change, an even one a
 *     there-and-back
 */
record Burst(List<Trip> trips) {
  /** Nothing else changes a contact again so soon: a window takes seconds to cross. */
  static final long QUIET_NS = 100_000_000;

  /** Bursts of one channel within one recording. */
  static List<Burst> of(List<Trip> trips) {
    List<Trip> sorted = new ArrayList<>(trips);
    sorted.sort((a, b) -> Double.compare(a.timeS(), b.timeS()));
    List<Burst> bursts = new ArrayList<>();
    List<Trip> open = new ArrayList<>();
    for (Trip trip : sorted) {
      if (!open.isEmpty() && !follows(open.get(open.size() - 1), trip)) {
        bursts.add(new Burst(List.copyOf(open)));
        open.clear();
      }
      open.add(trip);
    }
    if (!open.isEmpty()) {
      bursts.add(new Burst(List.copyOf(open)));
    }
    return bursts;
  }

  private static boolean follows(Trip before, Trip trip) {
    return trip.recording() == before.recording()
        && trip.change().beforeNs() - before.change().settledNs() < QUIET_NS;
  }

  /** The change is the first edge. */
  Trip first() {
    return trips.get(0);
  }

  Trip last() {
    return trips.get(trips.size() - 1);
  }

  /** Whether it ended in another state than it began in. */
  boolean changes() {
    return trips.size() % 2 == 1;
  }
}
