package tripline.harness.rehearse.valve;

import java.util.OptionalDouble;
import tripline.job.End;

/**
 * A technician at the handwheel: speeds up and slows down within a tenth of a second or so, turns
 * unevenly, slows down before a stop, presses it, and lets go.
 */
public final class Hand implements Mover {
  /** Time constant of his speeding up and slowing down, s. */
  private static final double ARM_S = 0.12;

  /** How stiffly the goal brakes him: speed allowed a turn of distance left, 1/s. */
  private static final double STIFFNESS = 8;

  private static final double CREEP = 0.01;
  private static final double STANDS = 0.004;

  /** He holds a stop for so long, then lets go for so long, steps. */
  private static final int HOLD_STEPS = 900;

  private static final int LET_GO_STEPS = 150;

  private enum Phase {
    TURNING,
    HOLDING,
    LETTING_GO,
    DONE
  }

  private final HandBuild build;
  private final double turnsPerS;
  private final double target;
  private final double sign;
  private final boolean toStop;
  private final double letGoTurns;
  private Phase phase = Phase.TURNING;
  private boolean stopping;
  private double base;
  private int steps;

  private Hand(VirtualValve valve, End toward, OptionalDouble target, OptionalDouble turnsPerS) {
    build = valve.build().hand();
    this.turnsPerS = turnsPerS.orElse(build.turnsPerS());
    sign = toward.approach().sign();
    double stopU = valve.sheet().end(toward).stopUTurns();
    double play = toward == End.OPEN ? valve.build().lostMotionTurns() : 0;
    double pressed = valve.build().stopTurns(toward) + play + sign * stopU * valve.feel();
    double here = valve.handwheelTurns();
    double stop = sign > 0 ? Math.max(pressed, here) : Math.min(pressed, here);
    toStop = target.isEmpty() || sign * (target.getAsDouble() - stop) >= 0;
    this.target = toStop ? stop : target.getAsDouble();
    letGoTurns = toStop ? 0.2 * stopU * Math.abs(valve.feel()) : 0;
  }

  /** Turns toward an end until he feels the hard stop, presses it and lets go. */
  public static Hand toStop(VirtualValve valve, End toward, OptionalDouble turnsPerS) {
    return new Hand(valve, toward, OptionalDouble.empty(), turnsPerS);
  }

  /** Turns the handwheel so far, lost motion included, or until he feels the hard stop. */
  public static Hand turns(VirtualValve valve, End toward, double turns, OptionalDouble turnsPerS) {
    double target = valve.handwheelTurns() + toward.approach().sign() * turns;
    return new Hand(valve, toward, OptionalDouble.of(target), turnsPerS);
  }

  /** Turns until the drive stands at x, by whichever way leads there. */
  public static Hand to(VirtualValve valve, double x, OptionalDouble turnsPerS) {
    End toward = x > valve.driveTurns() ? End.OPEN : End.CLOSED;
    double play = toward == End.OPEN ? valve.build().lostMotionTurns() : 0;
    return new Hand(valve, toward, OptionalDouble.of(x + play), turnsPerS);
  }

  @Override
  public void stop() {
    stopping = true;
  }

  @Override
  public boolean step(VirtualValve valve) {
    switch (phase) {
      case TURNING -> turn(valve);
      case HOLDING -> {
        valve.rest();
        if (++steps >= HOLD_STEPS) {
          next(Phase.LETTING_GO);
        }
      }
      case LETTING_GO -> letGo(valve);
      case DONE -> {
        return false;
      }
    }
    return true;
  }

  private void next(Phase then) {
    phase = then;
    steps = 0;
  }

  private void turn(VirtualValve valve) {
    double h = valve.handwheelTurns();
    double left = sign * (target - h);
    if (left <= 0 || (stopping && base < STANDS)) {
      valve.rest();
      next(toStop && !stopping ? Phase.HOLDING : Phase.DONE);
      return;
    }
    boolean near = toStop && left < build.approachTurns();
    double aim = stopping ? 0 : near ? Math.min(turnsPerS, build.approachTurnsPerS()) : turnsPerS;
    base += (aim - base) * Motion.STEP_S / ARM_S;
    base = Math.min(base, STIFFNESS * left + CREEP);
    double guess = h + sign * base * build.ripple(h) * Motion.STEP_S;
    double speed = sign * base * build.ripple(guess);
    double ahead = h + 0.5 * Motion.STEP_S * (valve.turnsPerS() + speed);
    if (sign * (target - ahead) <= 0) {
      valve.step(target, 0);
      next(toStop && !stopping ? Phase.HOLDING : Phase.DONE);
    } else {
      valve.step(ahead, speed);
    }
  }

  private void letGo(VirtualValve valve) {
    steps++;
    double u = (double) steps / LET_GO_STEPS;
    double back = letGoTurns * u * u * (3 - 2 * u);
    double speed = letGoTurns * 6 * u * (1 - u) / (LET_GO_STEPS * Motion.STEP_S);
    valve.step(target - sign * back, -sign * speed);
    if (steps >= LET_GO_STEPS) {
      next(Phase.DONE);
    }
  }
}
