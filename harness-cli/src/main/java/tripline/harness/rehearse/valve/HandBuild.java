package tripline.harness.rehearse.valve;

/**
 * How somebody turns a handwheel (common practice; ranges chosen by the authors).
 *
 * @param turnsPerS mean speed
 * @param once relative amplitude of the speed's ripple once a turn
 * @param oncePhase its phase, rad
 * @param twice relative amplitude twice a turn
 * @param twicePhase its phase, rad
 * @param approachTurns how far before a stop he slows down
 * @param approachTurnsPerS speed there
 */
public record HandBuild(
    double turnsPerS,
    double once,
    double oncePhase,
    double twice,
    double twicePhase,
    double approachTurns,
    double approachTurnsPerS) {

  /** Somebody: 0.45-0.9 turn/s, ripple 10-30 % of the speed. */
  static HandBuild somebody(Chance chance) {
    double ripple = chance.uniform(0.10, 0.30);
    double twice = chance.uniform(0.1, 0.5);
    return new HandBuild(
        chance.uniform(0.45, 0.9),
        ripple * (1 - twice),
        chance.uniform(0, 2 * Math.PI),
        ripple * twice,
        chance.uniform(0, 2 * Math.PI),
        0.3,
        0.25);
  }

  /** Speed at a handwheel position relative to the mean. */
  double ripple(double handwheelTurns) {
    double turn = 2 * Math.PI * handwheelTurns;
    return 1
        + once * StrictMath.sin(turn + oncePhase)
        + twice * StrictMath.sin(2 * turn + twicePhase);
  }
}
