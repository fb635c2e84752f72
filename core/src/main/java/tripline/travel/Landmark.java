package tripline.travel;

import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/**
 * Where a contact usually changes in one direction, pooled over the strokes of one setting and one
 * position zero.
 *
 * @param frame position zero, counted in order
 * @param setting setting index
 * @param channel channel index of the sheet
 * @param to the new state
 * @param direction direction of travel
 * @param turns where, handwheel turns from the frame's own zero; carries the scatter from stroke to
 *     stroke as a part
 * @param strokes how many changes it rests on
 */
record Landmark(
    int frame,
    int setting,
    int channel,
    ContactState to,
    Direction direction,
    Estimate turns,
    int strokes) {

  /** Same contact, same sense, same direction, same setting. */
  boolean matches(Landmark other) {
    return setting == other.setting
        && channel == other.channel
        && to == other.to
        && direction == other.direction;
  }

  /** Same contact, zero and setting, but the way back. */
  boolean isWayBackOf(Landmark other) {
    return frame == other.frame
        && setting == other.setting
        && channel == other.channel
        && to != other.to
        && direction != other.direction;
  }
}
