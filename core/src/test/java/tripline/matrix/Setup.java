package tripline.matrix;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import tripline.cases.Chart;
import tripline.cases.Site;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/** A seeded valve with its sensor and logger, of all kinds that are met in the field. */
final class Setup {
  static final double SHEET_SPAN = 10;
  static final MotorPlan MOTOR = MotorPlan.steady(0.65).withRipple(0.02, 3);

  final Rng rng;
  final Kind kind;
  final long seed;
  double span;
  double lostMotion;
  UnaryOperator<Chart> chart = c -> c;
  UnaryOperator<ActuatorPlan> built = p -> p;
  Consumer<Site.Loose> wires = l -> {};
  UnaryOperator<LoggerPlan> logger = l -> l;
  int pairs = 2;

  /**
   * A kind of sensor and logger.
   *
   * @param sensor as built
   * @param rateHz rows a second
   */
  record Kind(Sensor sensor, double rateHz) {}

  private static final List<Kind> KINDS =
      List.of(
          new Kind(new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0), 200),
          new Kind(new Sensor(SensorSide.DRIVE, -1 / 6.0, 0.01, 0.01, 0, 0, 81.5, 0), 100),
          new Kind(new Sensor(SensorSide.HANDWHEEL, 1, 0.001, 0.01, 0, 0, -3, 0), 100),
          new Kind(new Sensor(SensorSide.HANDWHEEL, 1 / 24.0, 1, 0, 0, 0, 300, 0), 100),
          new Kind(new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.001, 0, 0, 0, 0), 50));

  Setup(long seed) {
    this.seed = seed;
    rng = new Rng(seed * 7919 + 17);
    kind = KINDS.get((int) (Math.abs(seed) % KINDS.size()));
    span = SHEET_SPAN + rng.uniform(-0.3, 0.3);
    lostMotion = rng.uniform(0.1, 0.35);
  }

  /** One scan of the logger, s. */
  double scanS() {
    return 1 / kind.rateHz();
  }

  Site site() {
    return site(rng.chance(0.3));
  }

  /** With a half-way cam of one trip point. */
  Site plainSite() {
    return site(false);
  }

  private Site site(boolean band) {
    Chart base = Chart.of(kind.sensor()).powered().strokeTime(15);
    Chart drawn = chart.apply(band ? base.band() : base);
    return new Site(drawn, kind.sensor(), span, lostMotion, seed * 31 + 5)
        .logger(logger.apply(LoggerPlan.plain(kind.rateHz())))
        .wires(wires)
        .built(built);
  }

  /** Hand strokes to both stops and back, so many pairs. */
  Site byHand(Site site) {
    return site.byHand(
        "hand.csv",
        rng.uniform(1, 3),
        hand -> {
          hand.crank().toStop(End.CLOSED, "closed-stop");
          for (int k = 0; k < pairs; k++) {
            hand.crank().toStop(End.OPEN, k == 0 ? "open-stop" : "");
            hand.crank().toStop(End.CLOSED, "");
          }
        });
  }

  /** A motor stroke each way, zero kept. */
  static Site byMotor(Site site, MotorPlan motor) {
    return site.byMotor("open.csv", 0, motor, m -> m.run(End.OPEN))
        .byMotor("close.csv", 0, motor, m -> m.run(End.CLOSED));
  }
}
