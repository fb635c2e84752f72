package tripline.travel;

import java.util.Optional;
import tripline.job.End;
import tripline.measure.Estimate;

/**
 * The travel coordinate of one setting's recordings: what turns a reading into x.
 *
 * <p>With the closed stop known x = 0 there; with only the open stop known x = span of the sheet
 * there (or 0 where the sheet states none, x then being negative inside travel); with no stop known
 * x = 0 at the first reading.
 *
 * @param datum where x counts from
 * @param closedStop the closed hard stop
 * @param openStop the open hard stop
 * @param span distance in x between the stops, turns; empty unless both are known
 * @param lostMotion lost motion between sensor and drive, turns: 0 expected for a sensor on the
 *     drive side. From both directions over the same contacts: an upper bound, since a cam's own
 *     differential cannot be told apart
 */
public record Coordinate(
    Datum datum,
    Optional<HardStop> closedStop,
    Optional<HardStop> openStop,
    Optional<Estimate> span,
    Optional<Estimate> lostMotion) {

  /** The hard stop of an end. */
  public Optional<HardStop> stop(End end) {
    return end == End.CLOSED ? closedStop : openStop;
  }
}
