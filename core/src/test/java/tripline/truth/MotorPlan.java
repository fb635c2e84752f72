package tripline.truth;

/**
 * A drive under power. Deceleration law once the contactor has dropped out: {@code dv/dt =
 * -(friction + v / viscousS + seatStiffness * windUp)}.
 *
 * @param speed steady speed, turns/s
 * @param acceleration of the run-up, turns/s²
 * @param ripple relative amplitude of load ripple on the speed
 * @param ripplePerTurn its periods per handwheel turn
 * @param dropOutS contact change to loss of drive, s
 * @param friction turns/s², &gt; 0
 * @param viscousS s
 * @param seatStiffness deceleration per turn of wind-up, 1/s²
 * @param stallTurns wind-up that brings the powered motor to a stand, turns
 */
public record MotorPlan(
    double speed,
    double acceleration,
    double ripple,
    double ripplePerTurn,
    double dropOutS,
    double friction,
    double viscousS,
    double seatStiffness,
    double stallTurns) {

  /** A drive at an even speed that coasts some hundredths of a turn (common practice). */
  public static MotorPlan steady(double speed) {
    return new MotorPlan(speed, 4 * speed, 0, 0, 0.030, 2.0, 0.4, 800, 0.25);
  }

  public MotorPlan withRipple(double relative, double perTurn) {
    return new MotorPlan(
        speed,
        acceleration,
        relative,
        perTurn,
        dropOutS,
        friction,
        viscousS,
        seatStiffness,
        stallTurns);
  }

  public MotorPlan withCoast(double dropOut, double frictionPerS2, double viscous) {
    return new MotorPlan(
        speed,
        acceleration,
        ripple,
        ripplePerTurn,
        dropOut,
        frictionPerS2,
        viscous,
        seatStiffness,
        stallTurns);
  }

  /** Time from loss of drive to standstill, free of any stop: integral of the law. */
  public double coastS(double fromSpeed) {
    return viscousS * StrictMath.log(1 + fromSpeed / (friction * viscousS));
  }

  /** Way from loss of drive to standstill, free of any stop. */
  public double coastTurns(double fromSpeed) {
    return viscousS * (fromSpeed - friction * coastS(fromSpeed));
  }
}
