package tripline.truth;

import java.util.EnumSet;
import java.util.Set;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.Role;
import tripline.sample.ContactState;

/** Drives an {@link Actuator} under power until a contact, the operator or the supply stops it. */
public final class MotorDrive {
  private final Actuator actuator;
  private final MotorPlan plan;
  private final double phase;
  private final Set<End> torqueSeated = EnumSet.noneOf(End.class);

  public MotorDrive(Actuator actuator, MotorPlan plan, Rng rng) {
    this.actuator = actuator;
    this.plan = plan;
    phase = rng.uniform(0, 2 * Math.PI);
  }

  /** At this end the limit contact only tells the position: the torque contact stops the motor. */
  public MotorDrive seatsOnTorque(End end) {
    torqueSeated.add(end);
    return this;
  }

  /** Runs toward an end until its limit or torque contact stops it. */
  public PoweredStroke run(End toward) {
    return run(toward, Double.NaN, PoweredStroke.Cause.OPERATOR);
  }

  /** Runs toward an end; at {@code untilX} (NaN = never) the operator or the supply stops it. */
  public PoweredStroke run(End toward, double untilX, PoweredStroke.Cause cut) {
    actuator.beginStroke();
    Direction direction = toward.approach();
    double startS = actuator.timeS();
    double fromX = actuator.drive();
    actuator.contactor(toward, ContactState.CLOSED);
    actuator.rest(0.02);

    PoweredStroke.Cause cause = null;
    double cutS = Double.POSITIVE_INFINITY;
    double speed = 0;
    double stallS = 0;
    while (actuator.timeS() < cutS) {
      speed = powered(speed, toward, direction);
      if (cause == null) {
        cause = trigger(toward, direction, untilX, cut);
        if (cause != null) {
          double seenS =
              cause == PoweredStroke.Cause.LIMIT ? limitChangeS(toward, startS) : actuator.timeS();
          cutS = seenS + (cause == PoweredStroke.Cause.POWER_LOST ? 0 : plan.dropOutS());
        }
      }
      stallS = speed < 1e-3 * plan.speed() ? stallS + Path.STEP_S : 0;
      if (cause == null && stallS > 1.5) {
        cause = PoweredStroke.Cause.STALLED;
        cutS = actuator.timeS();
      }
    }
    double onsetS = actuator.timeS();
    double onsetX = actuator.drive();
    actuator.contactor(toward, ContactState.OPEN);
    while (speed > 0) {
      double brake =
          plan.friction()
              + speed / plan.viscousS()
              + plan.seatStiffness() * actuator.windUp(toward);
      speed = move(speed, speed - brake * Path.STEP_S, direction);
    }
    double limitS = limitChangeS(toward, startS);
    double coast =
        Math.abs(
            actuator.drive()
                - (Double.isNaN(limitS) ? Double.NaN : actuator.path().driveAt(limitS)));
    double stillS = actuator.timeS();
    return new PoweredStroke(
        toward, startS, fromX, onsetS, onsetX, stillS, actuator.drive(), cause, limitS, coast);
  }

  private double powered(double speed, End toward, Direction direction) {
    double load = actuator.windUp(toward) / plan.stallTurns();
    double turn = 2 * Math.PI * plan.ripplePerTurn() * actuator.handwheel();
    double aim =
        plan.speed()
            * (1 + plan.ripple() * StrictMath.sin(turn + phase))
            * Math.max(0, 1 - load * load);
    double next = Math.min(aim, speed + plan.acceleration() * Path.STEP_S);
    return move(speed, next, direction);
  }

  private double move(double speed, double aim, Direction direction) {
    double next = Math.max(0, aim);
    double share = aim < 0 ? speed / (speed - aim) : 1;
    double way = 0.5 * (speed + next) * Path.STEP_S * share;
    actuator.advance(actuator.handwheel() + direction.sign() * way, direction.sign() * next);
    return next;
  }

  private PoweredStroke.Cause trigger(
      End toward, Direction direction, double untilX, PoweredStroke.Cause cut) {
    if (actuator.torqueOpen(toward)) {
      return PoweredStroke.Cause.TORQUE;
    }
    if (limitOpen(toward)) {
      return PoweredStroke.Cause.LIMIT;
    }
    return direction.sign() * (actuator.drive() - untilX) >= 0 ? cut : null;
  }

  private boolean limitOpen(End end) {
    int contact = limit(end);
    return !torqueSeated.contains(end) && contact >= 0 && !actuator.state(contact);
  }

  private int limit(End end) {
    Role role = end == End.CLOSED ? Role.LIMIT_CLOSING : Role.LIMIT_OPENING;
    return actuator.plan().contact(role).map(actuator.plan().contacts()::indexOf).orElse(-1);
  }

  private double limitChangeS(End end, double sinceS) {
    int contact = limit(end);
    return actuator.changes().stream()
        .filter(c -> c.channel() == contact && !c.closed() && c.timeS() >= sinceS)
        .mapToDouble(TrueChange::timeS)
        .findFirst()
        .orElse(Double.NaN);
  }
}
