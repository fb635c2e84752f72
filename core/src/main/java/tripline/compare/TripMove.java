package tripline.compare;

import java.util.Optional;
import tripline.job.Direction;

/**
 * Where a contact changed in one direction of travel.
 *
 * @param contact name
 * @param cam the cam that carries it, by the later result
 * @param edge which trip point of a window; empty for a cam with one
 * @param direction of travel
 * @param move x, turns, + toward open
 * @param strokesBefore strokes it was seen in; 0 where it was not
 * @param strokesAfter the same, later
 * @param turned it changes to the other state than before
 */
public record TripMove(
    String contact,
    String cam,
    Optional<String> edge,
    Direction direction,
    Movement move,
    int strokesBefore,
    int strokesAfter,
    boolean turned) {

  TripMove judged(Family family) {
    return new TripMove(
        contact, cam, edge, direction, move.judged(family), strokesBefore, strokesAfter, turned);
  }

  /** Its cam, and which trip point of a window. */
  public String tripPoint() {
    return Cams.name(cam, edge.orElse(null));
  }
}
