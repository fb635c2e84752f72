package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.reduce.Change;
import tripline.reduce.Trace;
import tripline.sample.ContactState;

/** State of one channel of a trace over time, by its settled changes. */
public final class ContactTimeline {
  private final Optional<ContactState> first;
  private final List<Change> changes = new ArrayList<>();

  /**
   * @param trace the trace
   * @param channel channel name; a channel the trace does not have is never known
   */
  public ContactTimeline(Trace trace, String channel) {
    int index = trace.channels().indexOf(channel);
    for (Change change : trace.changes()) {
      if (change.channel() == index) {
        changes.add(change);
      }
    }
    if (!changes.isEmpty()) {
      first = Optional.of(changes.get(0).to().other());
    } else {
      first =
          index < 0
              ? Optional.empty()
              : state(trace.start(), index).or(() -> state(trace.end(), index));
    }
  }

  private static Optional<ContactState> state(Trace.States states, int index) {
    if ((states.known() >> index & 1) == 0) {
      return Optional.empty();
    }
    boolean closed = (states.closed() >> index & 1) != 0;
    return Optional.of(closed ? ContactState.CLOSED : ContactState.OPEN);
  }

  /** Settled state at a time, ns; empty where the channel was never read. */
  public Optional<ContactState> at(long timeNs) {
    Optional<ContactState> state = first;
    for (Change change : changes) {
      if (change.timeNs() > timeNs) {
        break;
      }
      state = Optional.of(change.to());
    }
    return state;
  }
}
