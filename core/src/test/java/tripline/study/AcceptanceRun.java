package tripline.study;

import tripline.cases.Chart;
import tripline.cases.Site;
import tripline.job.Acceptance;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.truth.ActuatorPlan;
import tripline.truth.CamPlan;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/**
 * One simulated acceptance of a valve whose cams scatter from stroke to stroke by a known law, so
 * that the share of all future trips in any interval is known as well. The limit cams are set such
 * that exactly the share asked for lies within their tolerance: to accept one is an error.
 *
 * @param cell what is simulated
 * @param seed of everything at random
 */
record AcceptanceRun(AcceptanceCell cell, long seed) {
  private static final double SPAN = 10.12;
  private static final double BACKOFF = 0.5;
  private static final double TOLERANCE = 0.1;
  private static final double MIDDLE_PERCENT = 50;
  private static final Sensor SENSOR =
      new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0);

  AcceptanceResult result() {
    Chart chart =
        Chart.of(SENSOR)
            .stopU(cell.stopU())
            .acceptance(new Acceptance(cell.strokes(), cell.confidence(), cell.share()));
    Site site =
        new Site(chart, SENSOR, SPAN, 0.28, seed)
            .logger(LoggerPlan.plain(100).with(LoggerPlan.Inputs.LATCHED))
            .built(this::scattering);
    int byHand = cell.drives() == AcceptanceCell.Drives.HAND ? cell.strokes() : 1;
    site.byHand(
        "hand.csv",
        1,
        hand -> {
          hand.crank().toStop(End.CLOSED, "closed-stop");
          for (int i = 0; i < byHand; i++) {
            hand.crank().toStop(End.OPEN, i == 0 ? "open-stop" : "");
            hand.crank().toStop(End.CLOSED, "");
          }
        });
    if (cell.strokes() > byHand) {
      MotorPlan motor = MotorPlan.steady(new Rng(seed).uniform(0.4, 0.9));
      site.byMotor(
          "motor.csv",
          0,
          motor,
          m -> {
            for (int i = byHand; i < cell.strokes(); i++) {
              m.run(End.OPEN);
              m.run(End.CLOSED);
            }
          });
    }
    AcceptanceResult result = Pipeline.accepted(site.sheet(), site.recordings()).acceptance();
    if (result == null) {
      throw new IllegalStateException("no acceptance in the result");
    }
    return result;
  }

  /** One cam without a differential, so that lost motion is measured without bias. */
  private ActuatorPlan scattering(ActuatorPlan plan) {
    return plan.withCam("lift", cam -> cam.withDifferential(0))
        .withCam("close", cam -> at(cam, BACKOFF + limitDeviation(), Direction.CLOSING))
        .withCam("open", cam -> at(cam, SPAN - BACKOFF - limitDeviation(), Direction.OPENING))
        .withCam("half", cam -> at(cam, MIDDLE_PERCENT / 100 * SPAN, Direction.CLOSING));
  }

  private CamPlan at(CamPlan cam, double x, Direction judged) {
    double now = cam.closingTrips().get(0) + (judged == Direction.OPENING ? cam.differential() : 0);
    return cam.moved(x - now).withScatter(cell.scatter());
  }

  /** One-sided: the farther limit is several standard deviations away. */
  private double limitDeviation() {
    return TOLERANCE - Normal.quantile(cell.share()) * cell.scatter();
  }

  /** True share of all future trips of a trip point that its interval holds. */
  double heldShare(AcceptedTrip trip) {
    double mean =
        switch (trip.cam()) {
          case "close" -> limitDeviation();
          case "open" -> -limitDeviation();
          default -> 0;
        };
    double low = (trip.from() - trip.target() - mean) / cell.scatter();
    double high = (trip.to() - trip.target() - mean) / cell.scatter();
    return Normal.below(high) - Normal.below(low);
  }
}
