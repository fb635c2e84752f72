package tripline.compare;

import java.util.Optional;
import tripline.measure.Estimate;
import tripline.result.Result.CamResult;

/**
 * A cam's trip point on the approach it is judged on.
 *
 * @param before the earlier result's figures, target and decision
 * @param after the later result's
 * @param trip the contact it is read from, one and the same in both results: the cam's limit
 *     contact, else its first by order in the sheet, that both saw; empty where there is none
 * @param againstOthers movement against the cams that stayed together, turns: what hard stops are
 *     uncertain by cancels. Empty where too few did
 * @param seen moved if either movement says so
 * @param differential opening less closing trip point, turns
 */
public record CamMove(
    CamResult before,
    CamResult after,
    Optional<TripMove> trip,
    Optional<Estimate> againstOthers,
    Seen seen,
    Movement differential) {

  /** Name, and which trip point of a window. */
  public String name() {
    return Cams.name(after);
  }

  /** Movement of its trip point, turns, + toward open. */
  public Movement move() {
    return trip.map(TripMove::move).orElse(Movement.UNKNOWN);
  }

  /** The movement to state: from the stop, but against the others where that alone tells it. */
  public Optional<Estimate> stated() {
    Optional<Estimate> by = move().by();
    return move().seen() != Seen.MOVED && (by.isEmpty() || seen == Seen.MOVED) ? againstOthers : by;
  }
}
