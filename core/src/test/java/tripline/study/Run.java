package tripline.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.cases.Chart;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.job.Role;
import tripline.job.Seat;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;
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
import tripline.truth.Sensor;
import tripline.truth.Timeline;
import tripline.truth.Wiring;

/**
 * One seeded run of a valve both ways, to be recorded by many loggers: eight cams of one contact
 * each, about a turn apart, so that the windows of neighbouring changes hardly overlap.
 */
final class Run {
  static final int CONTACTS = 8;
  static final double STOP_U = 0.01;
  static final double TOLERANCE = 0.1;

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
    if (motion == Cell.Motion.STRAIGHT || motion == Cell.Motion.TRIPPED) {
      MotorPlan motor = MotorPlan.steady(rng.uniform(0.3, 1.0));
      MotorDrive drive = new MotorDrive(actuator, motor, rng.split("motor"));
      if (motion == Cell.Motion.STRAIGHT) {
        drive.seatsOnTorque(End.OPEN).seatsOnTorque(End.CLOSED);
      }
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
      boolean marks = rng.chance(0.5);
      hand.toStop(End.CLOSED, marks ? "closed-stop" : "");
      hand.toStop(End.OPEN, marks ? "open-stop" : "");
      hand.toStop(End.CLOSED, "");
    }
    return new Run(actuator, new Wiring().timeline(actuator, rng.split("bounce")));
  }

  /** True backoff of an end: where its limit contact changes on the approach. */
  double backoff(End end) {
    ActuatorPlan plan = actuator.plan();
    CamPlan cam = plan.cams().get(end == End.CLOSED ? 0 : CONTACTS - 1);
    double closing = cam.closingTrips().get(0);
    return end == End.CLOSED ? closing : plan.spanTurns() - closing - cam.differential();
  }

  /** A sheet by which both backoffs lie exactly on a limit of their tolerance. */
  JobSheet sheet(Sensor sensor, Limit limit) {
    double off = limit == Limit.UPPER ? -TOLERANCE : TOLERANCE;
    ActuatorPlan plan = actuator.plan();
    List<Cam> cams =
        plan.cams().stream()
            .map(
                c ->
                    new Cam(
                        c.name(),
                        limits(c.name())
                            ? List.of()
                            : List.of(
                                new TripPlan(
                                    End.CLOSED,
                                    c.closingTrips().get(0),
                                    0.3,
                                    TripPlan.Unit.TURNS))))
            .toList();
    List<Contact> contacts =
        plan.contacts().stream()
            .map(
                c ->
                    new Contact(
                        c.name(),
                        c.channel(),
                        c.cam(),
                        c.closed(),
                        c.role(),
                        OptionalDouble.empty()))
            .toList();
    return new JobSheet(
        new JobIdentity("CW-114", "", ""),
        new TravelPlan(
            OptionalDouble.of(plan.spanTurns()),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        Chart.position(sensor),
        10_000_000,
        new EndSetting(Seat.LIMIT, backoff(End.CLOSED) + off, TOLERANCE, STOP_U),
        new EndSetting(Seat.LIMIT, backoff(End.OPEN) + off, TOLERANCE, STOP_U),
        cams,
        contacts,
        Acceptance.DEFAULT,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static boolean limits(String cam) {
    return cam.equals("cam1") || cam.equals("cam" + CONTACTS);
  }

  /** A limit of a tolerance. */
  enum Limit {
    LOWER,
    UPPER
  }

  /** Trip points 1 turn apart with +-0.15 at random, first and last a turn from the stops. */
  private static ActuatorPlan plan(Rng rng) {
    List<CamPlan> cams = new ArrayList<>();
    List<ContactPlan> contacts = new ArrayList<>();
    for (int i = 0; i < CONTACTS; i++) {
      String cam = "cam" + (i + 1);
      double trip = 1.1 + i + rng.uniform(-0.15, 0.15);
      cams.add(CamPlan.at(cam, trip, rng.uniform(0.01, 0.06)));
      boolean openSide = i == 0 || (i < CONTACTS - 1 && rng.chance(0.5));
      contacts.add(
          new ContactPlan(
              (i + 1) + (openSide ? "1-" : "3-") + (i + 1) + (openSide ? "2" : "4"),
              "k" + (i + 1),
              cam,
              openSide ? ClosedWhere.OPEN_SIDE : ClosedWhere.CLOSED_SIDE,
              i == 0 ? Role.LIMIT_CLOSING : i == CONTACTS - 1 ? Role.LIMIT_OPENING : Role.SPARE,
              0,
              ContactPlan.Wiring.SOUND));
    }
    return new ActuatorPlan(
        CONTACTS + 1.3, rng.uniform(0.1, 0.3), cams, contacts, Auxiliaries.NONE);
  }
}
