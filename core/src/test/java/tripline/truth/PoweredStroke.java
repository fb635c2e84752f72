package tripline.truth;

import tripline.job.End;

/**
 * What truly happened in a powered stroke. Times in s, travel x in turns.
 *
 * @param toward the end it ran toward
 * @param startS contactor in
 * @param fromX x there
 * @param onsetS drive lost: deceleration begins
 * @param onsetX x there
 * @param stillS standstill
 * @param stillX x there
 * @param cause what ended it
 * @param limitS change of the end's limit contact, NaN if it did not change
 * @param coast from that change to standstill, turns; NaN if it did not change
 */
public record PoweredStroke(
    End toward,
    double startS,
    double fromX,
    double onsetS,
    double onsetX,
    double stillS,
    double stillX,
    Cause cause,
    double limitS,
    double coast) {

  /** What ended a powered stroke. */
  public enum Cause {
    LIMIT,
    TORQUE,
    OPERATOR,
    POWER_LOST,
    /** It stood against the stop under power until something upstream cut it off. */
    STALLED
  }
}
