package tripline.live;

import java.util.Optional;
import tripline.job.Direction;
import tripline.sample.ContactState;

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
    Optional<Direction> direction(double turnsPerUnit) {
      if (this == STANDING) {
        return Optional.empty();
      }
      boolean opens = (this == RISING) == (turnsPerUnit > 0);
      return Optional.of(opens ? Direction.OPENING : Direction.CLOSING);
    }
  }

  /** State of a channel as last read; empty where it was not. */
  Optional<ContactState> state(int channel) {
    if (channel < 0 || (known >>> channel & 1) == 0) {
      return Optional.empty();
    }
    return Optional.of((closed >>> channel & 1) != 0 ? ContactState.CLOSED : ContactState.OPEN);
  }

  /** The same with contact states that are newer than the last row. */
  public Now with(long newerKnown, long newerClosed) {
    return new Now(timeNs, reading, turns, motion, newerKnown, newerClosed);
  }
}
