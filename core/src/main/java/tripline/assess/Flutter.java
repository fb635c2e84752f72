package tripline.assess;

import tripline.develop.Development;
import tripline.develop.Trip;
import tripline.reduce.Change;
import tripline.reduce.Disturbance;
import tripline.reduce.Trace;

/**
 * How long a contact fluttered before it settled, from the first edge that belongs to the change: a
 * worn contact may rest in its old state for longer than it takes to count as settled, and its
 * change then begins with what looks like a disturbance.
 */
final class Flutter {
  private final Development development;

  Flutter(Development development) {
    this.development = development;
  }

  /** First to last edge of one change, ns. */
  long lengthNs(Trip trip) {
    return trip.change().settledNs() - beginNs(trip);
  }

  /** First to last edge of a burst of changes, ns. */
  long lengthNs(Burst burst) {
    return burst.last().change().settledNs() - beginNs(burst.first());
  }

  private long beginNs(Trip trip) {
    Trace trace = development.recordings().get(trip.recording()).trace();
    Change change = trip.change();
    long begin = change.afterNs();
    for (int i = trace.disturbances().size() - 1; i >= 0; i--) {
      Disturbance before = trace.disturbances().get(i);
      boolean leadsIn =
          before.channel() == change.channel()
              && before.toNs() < begin
              && begin - before.toNs() < Burst.QUIET_NS;
      begin = leadsIn ? before.fromNs() : begin;
    }
    return begin;
  }
}
