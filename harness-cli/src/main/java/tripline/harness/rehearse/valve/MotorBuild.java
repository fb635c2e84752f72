package tripline.harness.rehearse.valve;

import java.util.Set;
import tripline.job.End;

/**
 * The drive under power. Once its contactor has dropped out it slows down by {@code frictionPerS2 +
 * speed / viscousS + seatStiffness * windUp}.
 *
 * @param turnsPerS steady speed
 * @param torqueSeated ends that it is to be stopped at by torque, not by the limit contact
 * @param dropOutS contact change to loss of drive, s
 * @param frictionPerS2 turns/s², &gt; 0
 * @param viscousS s
 * @param seatStiffness deceleration a turn of wind-up, 1/s²
 * @param torqueTripTurns wind-up beyond a stop that opens the torque contact, turns
 */
public record MotorBuild(
    double turnsPerS,
    Set<End> torqueSeated,
    double dropOutS,
    double frictionPerS2,
    double viscousS,
    double seatStiffness,
    double torqueTripTurns) {
  public MotorBuild {
    torqueSeated = Set.copyOf(torqueSeated);
  }

  /** A drive that coasts some hundredths of a turn (common practice). */
  static MotorBuild usual(double turnsPerS, Set<End> torqueSeated) {
    return new MotorBuild(turnsPerS, torqueSeated, 0.030, 2.0, 0.4, 800, 0.08);
  }
}
