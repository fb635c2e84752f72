package tripline.assess;

import java.util.Optional;
import tripline.develop.Development;
import tripline.develop.Trip;
import tripline.reduce.Trace;
import tripline.sample.ContactState;

/** The settled state of a channel at a time: its first state and what changed it since. */
public final class StateHistory {
  private final Development development;

  /** States of all recordings of a development. */
  public StateHistory(Development development) {
    this.development = development;
  }

  /**
   * State of a channel.
   *
   * @param timeS s from the recording's first stamp
   * @return empty where the channel had not been read yet
   */
  public Optional<ContactState> at(int recording, int channel, double timeS) {
    Optional<ContactState> state = first(recording, channel);
    for (Trip trip : development.trips()) {
      if (trip.recording() == recording && trip.channel() == channel && trip.timeS() <= timeS) {
        state = Optional.of(trip.to());
      }
    }
    return state;
  }

  private Optional<ContactState> first(int recording, int channel) {
    Trace.States start = development.recordings().get(recording).trace().start();
    long bit = 1L << channel;
    if ((start.known() & bit) == 0) {
      return Optional.empty();
    }
    return Optional.of((start.closed() & bit) != 0 ? ContactState.CLOSED : ContactState.OPEN);
  }
}
