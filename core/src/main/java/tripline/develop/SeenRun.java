package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.sample.ContactState;

/**
 * One contact over one stroke: the state it began in and the x at which it changed.
 *
 * @param from lowest x
 * @param to highest x
 * @param steps x of its changes, rising
 * @param states states between the steps from low to high x: one more than there are steps
 */
record SeenRun(double from, double to, List<Double> steps, List<ContactState> states) {

  /**
   * Empty where the contact was never read or the stroke has no place.
   *
   * @param ofChannel all trips of the channel
   */
  static Optional<SeenRun> of(
      Development development, Stroke stroke, int channel, List<Trip> ofChannel) {
    if (Double.isNaN(stroke.from()) || Double.isNaN(stroke.to())) {
      return Optional.empty();
    }
    String name = development.sheet().channels().contacts().get(channel);
    var trace = development.recordings().get(stroke.recording()).trace();
    long startNs = trace.firstNs() + Math.round(stroke.startS() * 1e9);
    List<Trip> trips =
        ofChannel.stream()
            .filter(t -> t.recording() == stroke.recording() && t.stroke() == stroke.number())
            .filter(t -> !t.atRest() && t.x().isPresent())
            .filter(t -> t.direction().equals(Optional.of(stroke.direction())))
            .toList();
    Optional<ContactState> begin =
        trips.isEmpty()
            ? new ContactTimeline(trace, name).at(startNs)
            : Optional.of(trips.get(0).to().other());
    return begin.map(state -> run(stroke, state, trips));
  }

  private static SeenRun run(Stroke stroke, ContactState begin, List<Trip> trips) {
    double low = Math.min(stroke.from(), stroke.to());
    double high = Math.max(stroke.from(), stroke.to());
    List<Double> steps = new ArrayList<>();
    List<ContactState> states = new ArrayList<>(List.of(begin));
    for (Trip trip : trips) {
      steps.add(Math.min(high, Math.max(low, trip.x().orElseThrow().value())));
      states.add(trip.to());
    }
    if (stroke.direction() == Direction.CLOSING) {
      java.util.Collections.reverse(steps);
      java.util.Collections.reverse(states);
    }
    return new SeenRun(low, high, steps, states);
  }

  /** State at x; empty outside the stroke. */
  Optional<ContactState> at(double x) {
    if (x < from || x > to) {
      return Optional.empty();
    }
    int i = 0;
    while (i < steps.size() && steps.get(i) <= x) {
      i++;
    }
    return Optional.of(states.get(i));
  }
}
