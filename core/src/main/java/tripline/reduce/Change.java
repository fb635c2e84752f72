package tripline.reduce;

import tripline.sample.ContactState;

/**
 * A settled change of a contact. The change is the first edge of the burst that ends in the new
 * state.
 *
 * @param channel contact channel index
 * @param to the new state
 * @param beforeNs last time the old state was still certain, ns
 * @param afterNs first time the first edge had happened, ns
 * @param settledNs last edge of the burst, ns (equal to {@code afterNs} where nothing bounced)
 * @param bounces extra edges of the burst
 * @param place the position there: a local fit, at the middle of the bracket (skew allowed for)
 * @param motion whether anything moved
 * @param delayNs how much later its stamps come than those of the position, beyond the sheet's
 *     skew: what the logger says its input filter takes, ns
 */
public record Change(
    int channel,
    ContactState to,
    long beforeNs,
    long afterNs,
    long settledNs,
    int bounces,
    Place place,
    Motion motion,
    long delayNs) {

  /** Of a contact whose input delays nothing. */
  public Change(
      int channel,
      ContactState to,
      long beforeNs,
      long afterNs,
      long settledNs,
      int bounces,
      Place place,
      Motion motion) {
    this(channel, to, beforeNs, afterNs, settledNs, bounces, place, motion, 0);
  }

  /** Middle of the bracket, ns. */
  public long timeNs() {
    return beforeNs + (afterNs - beforeNs) / 2;
  }

  /** When the old state was last certain, its input's delay allowed for, ns. */
  public long happenedAfterNs() {
    return beforeNs - delayNs;
  }

  /** By when the first edge had happened, its input's delay allowed for, ns. */
  public long happenedByNs() {
    return afterNs - delayNs;
  }

  /** Width of the bracket, ns. */
  public long gapNs() {
    return afterNs - beforeNs;
  }

  /** Whether the reading moved when the contact changed. */
  public enum Motion {
    MOVING,
    /** The reading stood still well before and well after. */
    AT_REST,
    /** No position readings around the change. */
    UNKNOWN
  }
}
