package tripline.assess;

import tripline.develop.Stroke;
import tripline.develop.Trip;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/**
 * A change of a contact at a known place of travel.
 *
 * @param trip the change
 * @param stroke the stroke it fell in
 * @param x where, turns
 * @param direction direction of travel
 */
public record Crossing(Trip trip, Stroke stroke, Estimate x, Direction direction) {

  /** Whether it leaves the contact closed on the open side of this place. */
  public boolean closedAbove() {
    return (trip.to() == ContactState.CLOSED) == (direction == Direction.OPENING);
  }
}
