package tripline.travel;

import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.reduce.Stopping;
import tripline.sample.ContactState;

/**
 * What happened about the end of a leg: the changes to open that held to standstill, of the limit
 * contact, the torque contact and the contactor auxiliary of the end it ran toward.
 *
 * @param limit the limit contact opened
 * @param torque the torque contact opened
 * @param motor the contactor fell out
 * @param stopping how the motion ended
 */
public record StopEvents(
    Optional<Passage> limit, Optional<Passage> torque, Optional<Passage> motor, Stopping stopping) {

  /**
   * A contact that closes again this shortly before standstill had still opened for the stop, ns.
   */
  private static final long SETTLING_NS = 50_000_000L;

  /** Contacts follow standstill by no more than this, ns; a contactor may linger longer. */
  private static final long AFTER_NS = 300_000_000L;

  private static final long MOTOR_AFTER_NS = 3_000_000_000L;

  /** Events of one leg. */
  public static StopEvents of(Survey survey, Leg leg) {
    End end = leg.direction().toward();
    SheetChannels channels = survey.channels();
    Optional<Passage> limit =
        channels.limits(end).stream()
            .flatMap(channel -> opened(survey, leg, channel, AFTER_NS).stream())
            .findFirst();
    return new StopEvents(
        limit,
        channels.torque(end).flatMap(channel -> opened(survey, leg, channel, AFTER_NS)),
        channels.motor(end).flatMap(channel -> opened(survey, leg, channel, MOTOR_AFTER_NS)),
        leg.stopping());
  }

  private static Optional<Passage> opened(Survey survey, Leg leg, int channel, long afterNs) {
    List<Passage> changes =
        survey.passages().stream()
            .filter(p -> p.recording() == leg.recording() && p.channel() == channel)
            .filter(p -> p.change().happenedByNs() >= leg.startNs())
            .filter(p -> p.change().happenedAfterNs() <= leg.endNs() + afterNs)
            .toList();
    Optional<Passage> open = Optional.empty();
    for (Passage passage : changes) {
      if (passage.change().to() == ContactState.OPEN) {
        open = open.isPresent() ? open : Optional.of(passage);
      } else if (passage.change().timeNs() - passage.change().delayNs()
          < leg.endNs() - SETTLING_NS) {
        open = Optional.empty();
      }
    }
    return open;
  }

  /** Whether the limit contact had certainly opened when the torque contact did. */
  public boolean limitBeforeTorque() {
    return limit.isPresent()
        && torque.isPresent()
        && limit.get().change().happenedByNs() <= torque.get().change().happenedAfterNs();
  }
}
