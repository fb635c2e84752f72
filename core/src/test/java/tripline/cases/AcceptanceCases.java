package tripline.cases;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.Sensor;

/** Several strokes of one setting, to be accepted together. */
final class AcceptanceCases {
  private static final Sensor SENSOR =
      new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0);
  private static final MotorPlan MOTOR = MotorPlan.steady(0.65).withRipple(0.02, 3);
  private static final double STEADY = 0.002;
  private static final String BY_HAND_FIRST =
      "A new actuator: stroked once each way by hand from stop to stop, then under power with position zero kept. ";

  private AcceptanceCases() {}

  static List<Case> all() {
    return List.of(repeats(), fewStrokes(), scatter(), outlier(), drift());
  }

  private static Site site(long seed, UnaryOperator<ActuatorPlan> built) {
    Chart chart =
        Chart.of(SENSOR).valve("FW-212", "Filter outlet isolation, DN 200 wedge gate valve", 6);
    return new Site(chart, SENSOR, 6.07, 0.26, seed)
        .logger(LoggerPlan.plain(50))
        .built(plan -> built.apply(steady(plan)));
  }

  /** Every cam scatters a little. */
  private static ActuatorPlan steady(ActuatorPlan plan) {
    ActuatorPlan steady = plan;
    for (var cam : plan.cams()) {
      steady = steady.withCam(cam.name(), c -> c.withScatter(STEADY));
    }
    return steady;
  }

  private static Site handThenMotor(Site site, Consumer<Site.Motor> strokes) {
    return site.byHand(
            "hand.csv",
            1.5,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              hand.crank().toStop(End.OPEN, "open-stop");
              hand.crank().toStop(End.CLOSED, "");
            })
        .byMotor("motor.csv", 0, MOTOR, strokes);
  }

  private static void bothWays(Site.Motor motor, int times) {
    for (int i = 0; i < times; i++) {
      motor.run(End.OPEN);
      motor.run(End.CLOSED);
    }
  }

  private static Case repeats() {
    return handThenMotor(site(311, p -> p), m -> bothWays(m, 4))
        .named(
            "accept-repeats",
            BY_HAND_FIRST
                + "Five full strokes each way in all; the cams repeat within a few thousandths of a turn.",
            "Accepted: the strokes of both recordings count together, and every tolerance interval lies within its"
                + " tolerance.",
            "accept")
        .toAccept();
  }

  private static Case fewStrokes() {
    return site(302, p -> p)
        .byHand(
            "hand.csv",
            1.5,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              hand.crank().toStop(End.OPEN, "open-stop");
              hand.crank().toStop(End.CLOSED, "");
              hand.crank().toStop(End.OPEN, "");
              hand.crank().toStop(End.CLOSED, "");
              for (int i = 0; i < 3; i++) {
                hand.crank().to(1.1);
                hand.crank().toStop(End.CLOSED, "");
              }
            })
        .named(
            "accept-few-strokes",
            "Stroked by hand, two full strokes each way, then rocked three times over the closing limit instead of a"
                + " third stroke.",
            "Undecided: the partial approaches are shown and left out, and one more full stroke each way is asked for.",
            "undecided")
        .toAccept();
  }

  private static Case scatter() {
    return handThenMotor(
            site(303, p -> p.withCam("open", cam -> cam.withScatter(0.011))), m -> bothWays(m, 3))
        .named(
            "accept-scatter",
            BY_HAND_FIRST
                + "Four full strokes each way; the cam of the opening limit has play in its gear and scatters.",
            "Undecided: every stroke was within tolerance, but four do not show that the next ones will be; the answer"
                + " says how many would.",
            "undecided")
        .toAccept();
  }

  private static Case outlier() {
    return handThenMotor(
            site(304, p -> p),
            m -> {
              bothWays(m, 3);
              m.run(End.OPEN);
              m.actuator().straysNext("close", 0.07);
              m.run(End.CLOSED);
              bothWays(m, 2);
            })
        .named(
            "accept-outlier",
            BY_HAND_FIRST
                + "Seven full strokes each way; in one of them the cam of the closing limit hung and tripped 0.07 turn too"
                + " far open.",
            "Undecided: the stroke is named, stays in every figure, and nothing is accepted on a scatter it has made.",
            "undecided")
        .toAccept();
  }

  private static Case drift() {
    return handThenMotor(
            site(305, p -> p.withCam("close", cam -> cam.moved(0.03).withDrift(-0.006))),
            m -> bothWays(m, 5))
        .named(
            "accept-drift",
            BY_HAND_FIRST
                + "Six full strokes each way; the gear of the closing limit's cam has not re-engaged, and its trip point"
                + " creeps 0.012 turn a cycle toward closed.",
            "Rejected: the trip point drifts, although every single stroke is within tolerance.",
            "reject",
            "trip-drift")
        .toAccept();
  }
}
