package tripline.truth;

/**
 * How a technician turns a handwheel (common practice; ranges chosen by the authors).
 *
 * @param runSpeed turns/s
 * @param ripple1 relative amplitude of the speed, once per turn
 * @param phase1 its phase, rad
 * @param ripple2 relative amplitude, twice per turn
 * @param phase2 its phase, rad
 * @param wander relative slow variation of the speed
 * @param turnsPerPause mean turns between pauses; infinite = none
 * @param reversalShare share of pauses after which he turns back a little first
 * @param approachTurns how far before a stop he slows down
 * @param approachSpeed turns/s there
 * @param stopU standard deviation of where he takes the stop to be, turns
 */
public record HandStyle(
    double runSpeed,
    double ripple1,
    double phase1,
    double ripple2,
    double phase2,
    double wander,
    double turnsPerPause,
    double reversalShare,
    double approachTurns,
    double approachSpeed,
    double stopU) {

  /** Somebody: 0.3-1.0 turn/s, ripple 10-35 % of the speed. */
  public static HandStyle somebody(Rng rng, double stopU) {
    double ripple = rng.uniform(0.10, 0.35);
    double twice = rng.uniform(0.1, 0.5);
    double run = rng.uniform(0.3, 1.0);
    return new HandStyle(
        run,
        ripple * (1 - twice),
        rng.uniform(0, 2 * Math.PI),
        ripple * twice,
        rng.uniform(0, 2 * Math.PI),
        0.08,
        Double.POSITIVE_INFINITY,
        0,
        0.3,
        Math.min(run, rng.uniform(0.2, 0.3)),
        stopU);
  }

  public HandStyle withPauses(double turnsBetween, double reversals) {
    return new HandStyle(
        runSpeed,
        ripple1,
        phase1,
        ripple2,
        phase2,
        wander,
        turnsBetween,
        reversals,
        approachTurns,
        approachSpeed,
        stopU);
  }

  public HandStyle withRunSpeed(double turnsPerS) {
    return new HandStyle(
        turnsPerS,
        ripple1,
        phase1,
        ripple2,
        phase2,
        wander,
        turnsPerPause,
        reversalShare,
        approachTurns,
        Math.min(approachSpeed, turnsPerS),
        stopU);
  }

  /** Speed at a handwheel position relative to the mean. */
  double ripple(double handwheelTurns) {
    double turn = 2 * Math.PI * handwheelTurns;
    return 1
        + ripple1 * StrictMath.sin(turn + phase1)
        + ripple2 * StrictMath.sin(2 * turn + phase2);
  }
}
