package tripline.job;

/**
 * How an end of travel is meant to be set.
 *
 * @param seat what is meant to stop the motor there
 * @param backoffTurns distance from the hard stop to the limit contact's change on the approach,
 *     turns, &gt;= 0
 * @param toleranceTurns its tolerance, turns, &gt; 0
 * @param stopUTurns standard uncertainty of a stop found by feel or plateau, turns, &gt;= 0
 */
public record EndSetting(
    Seat seat, double backoffTurns, double toleranceTurns, double stopUTurns) {}
