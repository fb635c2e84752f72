package tripline.harness.rehearse.valve;

import tripline.job.End;

/**
 * The motor, from the button to standstill: contactor in, run-up, a steady run until limit, torque
 * or operator stops it, contactor out, coast.
 */
public final class Motor implements Mover {
  private static final int PULL_IN_STEPS = 20;

  /** Wind-up at which the powered motor stands, turns; long before, its torque contact opens. */
  private static final double STALL_TURNS = 0.25;

  /** Run-up: full speed after a quarter of a second. */
  private static final double RUN_UP_PER_S = 4;

  private enum Phase {
    PULLING_IN,
    POWERED,
    DROPPING_OUT,
    COASTING,
    DONE
  }

  private final MotorBuild build;
  private final End toward;
  private Phase phase = Phase.PULLING_IN;
  private boolean operator;
  private double speed;
  private int steps;

  /** Runs toward an end from a standstill. */
  public Motor(VirtualValve valve, End toward) {
    this.build = valve.build().motor();
    this.toward = toward;
  }

  @Override
  public void stop() {
    operator = true;
  }

  @Override
  public boolean step(VirtualValve valve) {
    switch (phase) {
      case PULLING_IN -> pullIn(valve);
      case POWERED -> {
        power(valve);
        if (operator || valve.torqueOpen(toward) || stoppedByLimit(valve)) {
          phase = Phase.DROPPING_OUT;
          steps = 0;
        }
      }
      case DROPPING_OUT -> {
        power(valve);
        if (++steps >= build.dropOutS() / Motion.STEP_S) {
          valve.contactor(toward);
          phase = Phase.COASTING;
        }
      }
      case COASTING -> coast(valve);
      case DONE -> {
        return false;
      }
    }
    return true;
  }

  private boolean stoppedByLimit(VirtualValve valve) {
    return !build.torqueSeated().contains(toward) && valve.limitOpen(toward);
  }

  /** An open limit or torque contact of that end keeps the contactor out. */
  private void pullIn(VirtualValve valve) {
    boolean blocked = operator || valve.torqueOpen(toward) || stoppedByLimit(valve);
    if (steps == 0 && blocked) {
      phase = Phase.DONE;
    } else if (steps++ == 0) {
      valve.contactor(toward);
    } else if (steps > PULL_IN_STEPS) {
      phase = Phase.POWERED;
    }
    valve.rest();
  }

  private void power(VirtualValve valve) {
    double load = valve.windUp(toward) / STALL_TURNS;
    double most = build.turnsPerS() * Math.max(0, 1 - load * load);
    double next = speed + RUN_UP_PER_S * build.turnsPerS() * Motion.STEP_S;
    move(valve, Math.min(most, next));
  }

  private void coast(VirtualValve valve) {
    double brake =
        build.frictionPerS2()
            + speed / build.viscousS()
            + build.seatStiffness() * valve.windUp(toward);
    move(valve, speed - brake * Motion.STEP_S);
    if (speed == 0) {
      phase = Phase.DONE;
    }
  }

  /** Below 0 it came to rest within the step. */
  private void move(VirtualValve valve, double aim) {
    double next = Math.max(0, aim);
    double share = aim < 0 ? speed / (speed - aim) : 1;
    double way = 0.5 * (speed + next) * Motion.STEP_S * share;
    double sign = toward.approach().sign();
    speed = next;
    valve.step(valve.handwheelTurns() + sign * way, sign * next);
  }
}
