package tripline.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tripline.cases.Chart;
import tripline.cases.Site;
import tripline.compare.Account;
import tripline.compare.Accounts;
import tripline.compare.Comparison;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.result.Result;
import tripline.truth.ActuatorPlan;
import tripline.truth.CamPlan;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/**
 * A seeded valve measured twice, and by how much each cam truly moved in between.
 *
 * @param comparison what the product says
 * @param moved true movement of each cam, turns, + toward open
 */
record ComparedPair(Comparison comparison, Map<String, Double> moved) {
  /** How the two measurements hang together. */
  enum Meeting {
    /** By hand, sensor put on and stops touched anew. */
    ANEW,
    /** Two settings of one recording. */
    AS_LEFT,
    /** Then by motor, position zero and stops kept from the first. */
    ZERO_KEPT,
    /** Then by motor, laid over the first by contact changes. */
    ZERO_LOST
  }

  /** What moves in between. */
  enum Moving {
    NOTHING,
    /** One or two cams, by 0.01 to 0.3 turn. */
    SOME,
    /** All alike. */
    ALL
  }

  private static final MotorPlan MOTOR = MotorPlan.steady(0.65).withRipple(0.02, 3);

  /** Fine, drive side, noisy, coarse, of uncertain scale. */
  private static final List<Sensor> SENSORS =
      List.of(
          new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0),
          new Sensor(SensorSide.DRIVE, -1 / 6.0, 0.01, 0.01, 0, 0, 81.5, 0),
          new Sensor(SensorSide.HANDWHEEL, 1, 0.001, 0.01, 0, 0, -3, 0),
          new Sensor(SensorSide.HANDWHEEL, 1 / 24.0, 1, 0, 0, 0, 300, 0),
          new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.001, 0.0005, 0, 0, 0));

  private static final double[] RATES_HZ = {200, 100, 100, 100, 50};

  static ComparedPair of(Meeting meeting, Moving moving, long seed) {
    Rng rng = new Rng(seed * 104729 + 11);
    int kind = (int) (seed % SENSORS.size());
    Sensor sensor = SENSORS.get(kind);
    LoggerPlan logger = LoggerPlan.plain(RATES_HZ[kind]);
    double span = 10 + rng.uniform(-0.3, 0.3);
    double lost = rng.uniform(0.1, 0.35);
    Site first = new Site(Chart.of(sensor), sensor, span, lost, seed * 2).logger(logger);
    Map<String, Double> moved = moves(first.plan(), moving, rng);
    if (meeting == Meeting.AS_LEFT) {
      Result both = Pipeline.result(first.sheet(), adjusted(first, moved, rng).recordings());
      return new ComparedPair(
          Comparison.of(Accounts.asFound(both, "one"), Accounts.judged(both, "one")), moved);
    }
    Result before = Pipeline.result(first.sheet(), byHand(first, rng).recordings());
    Sensor again = meeting == Meeting.ZERO_KEPT ? sensor : putOnAnew(sensor, rng);
    Site second =
        new Site(Chart.of(again), again, span, lost, seed * 2 + 1)
            .logger(logger)
            .built(unused -> moved(first.plan(), moved));
    Account after =
        meeting == Meeting.ANEW
            ? Accounts.judged(
                Pipeline.result(second.sheet(), byHand(second, rng).recordings()), "b")
            : Accounts.judged(
                Pipeline.result(
                    second.sheet(),
                    byMotor(second, meeting, again).recordings(),
                    Optional.of(Accounts.reference(before))),
                "b",
                Accounts.digest("a"));
    return new ComparedPair(Comparison.of(Accounts.judged(before, "a"), after), moved);
  }

  private static Map<String, Double> moves(ActuatorPlan plan, Moving moving, Rng rng) {
    Map<String, Double> moves = new LinkedHashMap<>();
    double all = moving == Moving.ALL ? some(rng) : 0;
    plan.cams().forEach(c -> moves.put(c.name(), all));
    if (moving == Moving.SOME) {
      int count = rng.chance(0.5) ? 1 : 2;
      for (int i = 0; i < count; i++) {
        CamPlan cam = plan.cams().get((int) rng.uniform(0, plan.cams().size()));
        moves.put(cam.name(), some(rng));
      }
    }
    return moves;
  }

  /** Sizes spread evenly over their logarithm. */
  private static double some(Rng rng) {
    double size = 0.01 * Math.pow(30, rng.uniform(0, 1));
    return rng.chance(0.5) ? size : -size;
  }

  private static ActuatorPlan moved(ActuatorPlan plan, Map<String, Double> moves) {
    ActuatorPlan moved = plan;
    for (Map.Entry<String, Double> move : moves.entrySet()) {
      moved = moved.withCam(move.getKey(), c -> c.moved(move.getValue()));
    }
    return moved;
  }

  private static Site byHand(Site site, Rng rng) {
    int pairs = rng.chance(0.5) ? 1 : 2;
    return site.byHand("hand.csv", rng.uniform(1, 3), hand -> strokes(hand, pairs));
  }

  private static void strokes(Site.Hand hand, int pairs) {
    hand.crank().toStop(End.CLOSED, "closed-stop");
    for (int k = 0; k < pairs; k++) {
      hand.crank().toStop(End.OPEN, k == 0 ? "open-stop" : "");
      hand.crank().toStop(End.CLOSED, "");
    }
  }

  /** Adjusted at 3 turns open, clear of every cam. */
  private static Site adjusted(Site site, Map<String, Double> moves, Rng rng) {
    Consumer<Site.Hand> script =
        hand -> {
          strokes(hand, 1);
          hand.crank().to(3);
          hand.actuator().rest(1);
          moves.forEach(
              (cam, by) -> {
                if (by != 0) {
                  hand.actuator().adjust(cam, by, 2);
                }
              });
          hand.actuator().mark("adjusted");
          hand.actuator().rest(1);
          hand.crank().toStop(End.OPEN, "");
          hand.crank().toStop(End.CLOSED, "");
        };
    return site.byHand("hand.csv", rng.uniform(1, 3), script);
  }

  private static Site byMotor(Site site, Meeting meeting, Sensor sensor) {
    return site.byMotor(
        "motor.csv",
        0.3,
        MOTOR,
        meeting == Meeting.ZERO_KEPT ? "kept" : "lost",
        sensor,
        motor -> {
          motor.run(End.OPEN);
          motor.run(End.CLOSED);
        });
  }

  /** Its counts then fall on other places. */
  private static Sensor putOnAnew(Sensor sensor, Rng rng) {
    return sensor.withOffset(sensor.offset() + rng.uniform(-5, 5), 0);
  }
}
