package tripline.live;

import tripline.job.Direction;

/**
 * The latest that was read.
 *
 * @param timeNs stamp of the last row, edge, mark or loss, ns of the recording's clock
 * @param reading position, smoothed over some 25 ms, unwrapped, units of the position channel; NaN
 *     before the first
 * @param turns where the reading turned back on its way here
 * @param motion whether it moves
 * @param known contact channels that have been read
 * @param closed those among them that are closed as last read, bounces and all
 */
public record Now(
    long timeNs, double reading, TurningPoints turns, Motion motion, long known, long closed) {

  /** Whether the reading moves. */
  public enum Motion {
    STANDING,
    /** It rises. */
    RISING,
    /** It falls. */
    FALLING;

    /** Which way the drive travels for a reading that does this; standing counts as no way. */
    java.util.Optional<Direction> direction(double turnsPerUnit) {
      if (this == STANDING) {
        return java.util.Optional.empty();
      }
      boolean opens = (this == RISING) == (turnsPerUnit > 0);
      return java.util.Optional.of(opens ? Direction.OPENING : Direction.CLOSING);
    }
  }

  /** The same with contact states that are newer than the last row. */
  public Now with(long newerKnown, long newerClosed) {
    return new Now(timeNs, reading, turns, motion, newerKnown, newerClosed);
  }
}
