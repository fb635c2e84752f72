package tripline.truth;

import tripline.job.ClosedWhere;
import tripline.job.Role;

/**
 * A contact as built.
 *
 * @param name terminal marks
 * @param channel the logger's channel
 * @param cam the cam that moves it
 * @param closed on which side of the trip it is closed
 * @param role what it is for
 * @param makeDelay how much later than the break of its mates it makes, turns (break before make);
 *     negative overlaps
 * @param wiring how it answers
 */
public record ContactPlan(
    String name,
    String channel,
    String cam,
    ClosedWhere closed,
    Role role,
    double makeDelay,
    Wiring wiring) {

  /** How a contact answers its cam. */
  public enum Wiring {
    SOUND,
    STUCK_OPEN,
    STUCK_CLOSED,
    INVERTED
  }

  public ContactPlan withWiring(Wiring other) {
    return new ContactPlan(name, channel, cam, closed, role, makeDelay, other);
  }

  public ContactPlan withChannel(String other) {
    return new ContactPlan(name, other, cam, closed, role, makeDelay, wiring);
  }

  public ContactPlan withMakeDelay(double turns) {
    return new ContactPlan(name, channel, cam, closed, role, turns, wiring);
  }
}
