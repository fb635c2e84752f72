package tripline.truth;

import tripline.job.End;

/** A technician at the handwheel of an {@link Actuator}. */
public final class HandCrank {
  /** Time constant of his speeding up and slowing down, s. */
  private static final double ARM_S = 0.12;

  /** How stiffly the stop brakes him: speed allowed per turn of distance left, 1/s. */
  private static final double STOP_STIFFNESS = 8;

  private static final double CREEP = 0.01;

  /** What he keeps clear of a stop when he turns back a little, turns. */
  private static final double CLEAR_TURNS = 0.05;

  private final Actuator actuator;
  private final HandStyle style;
  private final Rng rng;
  private double base;
  private double wander = 1;
  private double wanderAim = 1;
  private double untilPause;

  public HandCrank(Actuator actuator, HandStyle style, Rng rng) {
    this.actuator = actuator;
    this.style = style;
    this.rng = rng;
    untilPause = rng.exponential(style.turnsPerPause());
  }

  /**
   * Runs to the hard stop: slows down, presses (the plateau misses the true stop by a normal
   * deviate of {@code stopU}), holds for a second or so, lets go.
   *
   * @param mark what he presses while he holds, empty = nothing
   */
  public void toStop(End end, String mark) {
    actuator.beginStroke();
    double play = end == End.OPEN ? actuator.plan().lostMotionTurns() : 0;
    double stop = end == End.OPEN ? actuator.plan().spanTurns() + play : 0;
    double outward = end == End.OPEN ? 1 : -1;
    double windUp = style.stopU() * rng.gaussian();
    turnTo(stop + outward * windUp, style.approachTurns());
    double hold = rng.uniform(0.8, 1.8);
    actuator.rest(hold * 0.6);
    if (!mark.isEmpty()) {
      actuator.mark(mark);
    }
    actuator.rest(hold * 0.4);
    letGo(actuator.handwheel() - outward * rng.uniform(0, 0.3) * style.stopU());
    actuator.rest(rng.uniform(0.3, 0.7));
  }

  /** Turns until the drive stands about at x, approached from where it is. */
  public void to(double x) {
    actuator.beginStroke();
    double play = x > actuator.drive() ? actuator.plan().lostMotionTurns() : 0;
    turnTo(x + play, 0);
    actuator.rest(0.3);
  }

  private void letGo(double handwheelTurns) {
    double from = actuator.handwheel();
    int steps = 150;
    for (int k = 1; k <= steps; k++) {
      double s = (double) k / steps;
      double h = from + (handwheelTurns - from) * s * s * (3 - 2 * s);
      actuator.advance(h, (handwheelTurns - from) * 6 * s * (1 - s) / (steps * Path.STEP_S));
    }
  }

  private void turnTo(double target, double approachTurns) {
    double sign = Math.signum(target - actuator.handwheel());
    while (actuator.handwheel() != target) {
      double left = Math.abs(target - actuator.handwheel());
      double aim = left < approachTurns ? style.approachSpeed() : style.runSpeed() * wander();
      boolean pausing = untilPause <= 0 && left > 0.3;
      step(sign, target, pausing ? 0 : aim);
      if (pausing && base < 0.004) {
        pause(sign);
      }
    }
    base = 0;
  }

  private void pause(double sign) {
    base = 0;
    actuator.advance(actuator.handwheel(), 0);
    actuator.rest(rng.uniform(0.3, 2.0));
    untilPause = rng.exponential(style.turnsPerPause());
    if (rng.chance(style.reversalShare())) {
      double keep = untilPause;
      untilPause = Double.POSITIVE_INFINITY;
      turnTo(within(actuator.handwheel() - sign * rng.uniform(0.1, 0.6)), 0);
      actuator.rest(rng.uniform(0.2, 0.6));
      untilPause = keep;
    }
  }

  /** Nobody turns back through a stop he has just left. */
  private double within(double handwheelTurns) {
    double most = actuator.plan().spanTurns() + actuator.plan().lostMotionTurns();
    return Math.max(CLEAR_TURNS, Math.min(most - CLEAR_TURNS, handwheelTurns));
  }

  private void step(double sign, double target, double aim) {
    double h = actuator.handwheel();
    base += (aim - base) * Path.STEP_S / ARM_S;
    base = Math.min(base, STOP_STIFFNESS * Math.abs(target - h) + CREEP);
    double guess = h + sign * base * style.ripple(h) * Path.STEP_S;
    double speed = sign * base * style.ripple(guess);
    double next = h + 0.5 * Path.STEP_S * (actuator.path().lastSpeed() + speed);
    untilPause -= Math.abs(next - h);
    if (sign * (target - next) <= 0) {
      actuator.advance(target, 0);
    } else {
      actuator.advance(next, speed);
    }
  }

  private double wander() {
    if (rng.chance(Path.STEP_S / 2.0)) {
      wanderAim = 1 + style.wander() * rng.gaussian();
    }
    wander += (wanderAim - wander) * Path.STEP_S / 0.8;
    return wander;
  }
}
