package tripline.study;

import java.util.ArrayList;
import java.util.List;
import tripline.job.ClosedWhere;
import tripline.job.End;
import tripline.job.Role;
import tripline.truth.Actuator;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.CamPlan;
import tripline.truth.ContactPlan;
import tripline.truth.HandCrank;
import tripline.truth.HandStyle;
import tripline.truth.MotorDrive;
import tripline.truth.MotorPlan;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;
import tripline.truth.Timeline;
import tripline.truth.Wiring;

/**
 * One seeded run of a valve both ways, to be recorded by many loggers: eight cams of one contact
 * each, about a turn apart, so that the windows of neighbouring changes hardly overlap.
 */
final class Run {
  static final int CONTACTS = 8;
  static final double STOP_U = 0.01;

  final Actuator actuator;
  final Timeline timeline;

  private Run(Actuator actuator, Timeline timeline) {
    this.actuator = actuator;
    this.timeline = timeline;
  }

  static Run of(Cell.Motion motion, long seed) {
    Rng rng = new Rng(seed);
    ActuatorPlan plan = plan(rng.split("plan"));
    Actuator actuator = new Actuator(plan, rng.uniform(0.15, 0.3), rng.split("cams"));
    if (motion == Cell.Motion.STRAIGHT) {
      MotorPlan motor = MotorPlan.steady(rng.uniform(0.3, 1.0));
      MotorDrive drive = new MotorDrive(actuator, motor, rng.split("motor"));
      actuator.rest(1);
      drive.run(End.OPEN, plan.spanTurns() - 0.15, PoweredStroke.Cause.OPERATOR);
      actuator.rest(1);
      drive.run(End.CLOSED, 0.15, PoweredStroke.Cause.OPERATOR);
      actuator.rest(1);
    } else {
      HandStyle style = HandStyle.somebody(rng, STOP_U);
      if (motion == Cell.Motion.PAUSES) {
        style = style.withPauses(rng.uniform(2, 6), 0.25);
      }
      HandCrank hand = new HandCrank(actuator, style, rng.split("hand"));
      actuator.rest(1);
      hand.toStop(End.CLOSED, "closed-stop");
      hand.toStop(End.OPEN, "open-stop");
      hand.toStop(End.CLOSED, "closed-stop");
    }
    return new Run(actuator, new Wiring().timeline(actuator, rng.split("bounce")));
  }

  /** Trip points 1 turn apart with +-0.15 at random, first and last a turn from the stops. */
  private static ActuatorPlan plan(Rng rng) {
    List<CamPlan> cams = new ArrayList<>();
    List<ContactPlan> contacts = new ArrayList<>();
    for (int i = 0; i < CONTACTS; i++) {
      String cam = "cam" + (i + 1);
      double trip = 1.1 + i + rng.uniform(-0.15, 0.15);
      cams.add(CamPlan.at(cam, trip, rng.uniform(0.01, 0.06)));
      ClosedWhere closed = rng.chance(0.5) ? ClosedWhere.OPEN_SIDE : ClosedWhere.CLOSED_SIDE;
      contacts.add(
          new ContactPlan(
              (i + 1) + "1", "k" + (i + 1), cam, closed, Role.SPARE, 0, ContactPlan.Wiring.SOUND));
    }
    return new ActuatorPlan(
        CONTACTS + 1.3, rng.uniform(0.1, 0.3), cams, contacts, Auxiliaries.NONE);
  }
}
