package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Seat;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.sample.Drive;
import tripline.travel.Caveat;
import tripline.travel.Datum;
import tripline.travel.HardStop.Source;
import tripline.travel.RecordingTrace;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.PoweredStroke;
import tripline.truth.Sensor;

/** Powered strokes against the model's truth. */
class MotorStrokesTest {
  private static final Sensor SENSOR = Sensor.turns(SensorSide.HANDWHEEL, 0, 0);
  private static final PositionChannel CHANNEL = HandJob.channel(SENSOR);
  private static final Auxiliaries NO_TORQUE = new Auxiliaries("", "", "m1", "m2", 0.08);

  private static ActuatorPlan with(ActuatorPlan plan, Auxiliaries aux) {
    return new ActuatorPlan(
        plan.spanTurns(), plan.lostMotionTurns(), plan.cams(), plan.contacts(), aux);
  }

  private static Development develop(HandJob job, Seat seat) {
    JobSheet sheet = Demo.sheet(CHANNEL, seat, job.actuator.plan());
    return HandJob.develop(sheet, job.recording(SENSOR));
  }

  private static StoppedBy lastCause(Development development) {
    List<Stroke> strokes = development.strokes();
    return strokes.get(strokes.size() - 1).stoppedBy();
  }

  /** One recording, first by hand and then by motor, and nobody said so. */
  @Test
  void contactorsTellWhatMovedTheValveStrokeByStroke() {
    HandJob job = new HandJob(with(Demo.actuator(), Auxiliaries.ALL), 4, 1);
    job.fullStrokes(false).motorTo(End.OPEN).motorTo(End.CLOSED);
    RecordingTrace stated = job.recording(SENSOR);
    RecordingTrace unstated =
        new RecordingTrace(
            stated.name(),
            stated.sha256(),
            Drive.MOTOR,
            RecordingTrace.Told.BY_CONTACTORS,
            stated.zero(),
            stated.trace());
    JobSheet sheet = Demo.sheet(CHANNEL, Seat.LIMIT, job.actuator.plan());
    Development development = HandJob.develop(sheet, unstated);
    assertThat(development.strokes())
        .extracting(Stroke::drive, Stroke::stoppedBy)
        .containsExactly(
            tuple(Drive.HAND, StoppedBy.HARD_STOP),
            tuple(Drive.HAND, StoppedBy.HARD_STOP),
            tuple(Drive.HAND, StoppedBy.HARD_STOP),
            tuple(Drive.MOTOR, StoppedBy.LIMIT),
            tuple(Drive.MOTOR, StoppedBy.LIMIT));
    assertThat(development.strokes())
        .allSatisfy(s -> assertThat(s.powered().isPresent()).isEqualTo(s.drive() == Drive.MOTOR));
    assertThat(development.coordinate().closedStop()).isPresent();
    assertThat(development.coordinate().openStop()).isPresent();
    // Taken as the motor's, the hand's strokes say nothing of a stop.
    assertThat(HandJob.develop(sheet, stated).coordinate().closedStop()).isEmpty();
  }

  @Test
  void limitStopsAndCoastIsMeasuredWithoutAnyStop() {
    for (Auxiliaries aux : List.of(Auxiliaries.ALL, NO_TORQUE, Auxiliaries.NONE)) {
      HandJob job = new HandJob(with(Demo.actuator(), aux), 4, 1);
      job.motorTo(End.CLOSED).motorTo(End.OPEN);
      Development development = develop(job, Seat.LIMIT);
      assertThat(development.coordinate().datum()).isEqualTo(Datum.FIRST_READING);
      assertThat(development.coordinate().closedStop()).isEmpty();
      for (int i = 0; i < 2; i++) {
        Stroke stroke = development.strokes().get(i);
        PoweredStroke truth = job.powered.get(i);
        assertThat(stroke.stoppedBy()).isEqualTo(StoppedBy.LIMIT);
        Stroke.Powered powered = stroke.powered().orElseThrow();
        assertThat(powered.coast().orElseThrow().value()).isCloseTo(truth.coast(), within(1e-3));
        assertThat(powered.standstillS().orElseThrow().value())
            .isCloseTo(truth.stillS(), within(0.1));
        assertThat(powered.onsetS().orElseThrow().value()).isCloseTo(truth.onsetS(), within(1e-6));
        assertThat(powered.powerLost()).isFalse();
      }
    }
  }

  @Test
  void coastCarriesNoCommonPartButScaleAndSkew() {
    PositionChannel channel =
        new PositionChannel(
            SensorSide.HANDWHEEL, 1, 0, 0.01, 0, 1_000_000, java.util.OptionalDouble.empty());
    HandJob job = new HandJob(Demo.actuator(), 4, 2).motorTo(End.CLOSED);
    Development development =
        HandJob.develop(Demo.sheet(channel, Seat.LIMIT, Demo.actuator()), job.recording(SENSOR));
    Estimate coast = development.strokes().get(0).powered().orElseThrow().coast().orElseThrow();
    assertThat(coast.budget().keySet())
        .containsExactlyInAnyOrder("resolution", "fit", "scale", "skew", "standstill");
    assertThat(coast.budget().get("skew")).isCloseTo(0.65 * 0.001, within(1e-5));
    assertThat(coast.budget().get("scale")).isCloseTo(0.01 * coast.value(), within(1e-9));
  }

  @Test
  void aLimitThatNeverChangesLeavesItToTorque() {
    ActuatorPlan late = Demo.actuator().withCam("close", cam -> cam.moved(-2));
    HandJob job = new HandJob(late, 4, 3).motorTo(End.CLOSED);
    assertThat(lastCause(develop(job, Seat.LIMIT))).isEqualTo(StoppedBy.TORQUE);
    assertThat(develop(job, Seat.LIMIT).coordinate().closedStop()).isEmpty();

    HandJob unseen = new HandJob(with(late, NO_TORQUE), 4, 3).motorTo(End.CLOSED);
    assertThat(lastCause(develop(unseen, Seat.LIMIT))).isEqualTo(StoppedBy.UNKNOWN);
  }

  @Test
  void anObstructionInMidTravelIsTorqueAndNoStop() {
    for (Seat seat : Seat.values()) {
      HandJob job = new HandJob(Demo.actuator(), 4, 4);
      job.actuator.obstruct(End.CLOSED, 2);
      job.motorTo(End.CLOSED);
      assertThat(lastCause(develop(job, seat))).isEqualTo(StoppedBy.TORQUE);
      assertThat(develop(job, seat).coordinate().closedStop()).isEmpty();
    }
  }

  @Test
  void operatorAndPowerAreToldFromLimitAndTorque() {
    for (PoweredStroke.Cause cause :
        List.of(PoweredStroke.Cause.OPERATOR, PoweredStroke.Cause.POWER_LOST)) {
      HandJob job = new HandJob(Demo.actuator(), 8, 5);
      job.powered.add(job.motor.run(End.CLOSED, 4, cause));
      job.actuator.rest(2);
      assertThat(lastCause(develop(job, Seat.LIMIT))).isIn(StoppedBy.OPERATOR, StoppedBy.UNKNOWN);
      assertThat(develop(job, Seat.LIMIT).strokes().get(0).full()).isFalse();

      HandJob unseen = new HandJob(with(Demo.actuator(), Auxiliaries.NONE), 8, 5);
      unseen.powered.add(unseen.motor.run(End.CLOSED, 4, cause));
      unseen.actuator.rest(2);
      assertThat(lastCause(develop(unseen, Seat.LIMIT))).isEqualTo(StoppedBy.UNKNOWN);
    }
  }

  @Test
  void stoppedJustBeforeTheLimitAndCoastingThroughItIsNotTheLimit() {
    for (Auxiliaries aux : List.of(Auxiliaries.ALL, NO_TORQUE, Auxiliaries.NONE)) {
      HandJob job = new HandJob(with(Demo.actuator(), aux), 8, 6);
      job.powered.add(job.motor.run(End.CLOSED, 0.54, PoweredStroke.Cause.OPERATOR));
      job.actuator.rest(2);
      assertThat(job.powered.get(0).coast()).isPositive();
      assertThat(lastCause(develop(job, Seat.LIMIT)))
          .isEqualTo(aux.equals(Auxiliaries.ALL) ? StoppedBy.OPERATOR : StoppedBy.UNKNOWN);
    }
  }

  @Test
  void aTorqueSeatedStopIsAReferenceALimitSeatedNever() {
    // limit not in the motor's way: the model's motor stops on whichever opens first, so the end's
    // limit role is taken by no contact of the model
    HandJob job = new HandJob(torqueSeated(), 4, 7);
    job.motorTo(End.CLOSED).motorTo(End.OPEN).motorTo(End.CLOSED);
    JobSheet sheet = Demo.sheet(CHANNEL, Seat.TORQUE, Demo.actuator());
    Development development = HandJob.develop(sheet, job.recording(SENSOR));
    assertThat(development.strokes()).extracting(Stroke::stoppedBy).containsOnly(StoppedBy.TORQUE);
    assertThat(development.coordinate().closedStop().orElseThrow().source())
        .isEqualTo(Source.TORQUE);
    // wound up beyond the free stop by what the torque contact needs, 0.08 turn and the coast
    assertThat(development.coordinate().closedStop().orElseThrow().reading().value())
        .isBetween(-0.2, -0.05);

    HandJob seated = new HandJob(Demo.actuator(), 4, 7);
    seated.motorTo(End.CLOSED).motorTo(End.OPEN).motorTo(End.CLOSED);
    assertThat(develop(seated, Seat.LIMIT).coordinate().closedStop()).isEmpty();
    assertThat(develop(seated, Seat.TORQUE).coordinate().closedStop()).isEmpty();
  }

  /** A mark that is not believed leaves the stop to whatever else found it. */
  @Test
  void aTorqueSeatedStopStandsInForAMarkThatAHandStrokePassed() {
    HandJob job = new HandJob(torqueSeated(), 4, 7);
    job.motorTo(End.CLOSED).motorTo(End.OPEN).motorTo(End.CLOSED);
    JobSheet sheet = Demo.sheet(CHANNEL, Seat.TORQUE, Demo.actuator());
    RecordingTrace byMotor = job.recording(SENSOR);
    HandJob wrong = new HandJob(Demo.actuator(), 4, 12);
    wrong.hand.to(1.5);
    wrong.actuator.rest(1);
    wrong.actuator.mark("closed-stop");
    wrong.actuator.rest(1);
    wrong.hand.to(3);
    wrong.hand.to(0.8);
    wrong.hand.to(3);
    RecordingTrace byHand = wrong.recording(SENSOR, RecordingTrace.Zero.KEPT, 0, 0);
    Development development = HandJob.develop(sheet, byMotor, byHand);
    assertThat(development.doubts())
        .singleElement()
        .satisfies(d -> assertThat(d.kind()).isEqualTo(Caveat.Kind.MARK_NOT_AT_STOP));
    assertThat(development.coordinate().closedStop().orElseThrow().source())
        .isEqualTo(Source.TORQUE);
  }

  /** The same contacts with other roles, so that nothing but torque stops the model's motor. */
  private static ActuatorPlan torqueSeated() {
    ActuatorPlan plan = Demo.actuator();
    return new ActuatorPlan(
        plan.spanTurns(),
        plan.lostMotionTurns(),
        plan.cams(),
        plan.contacts().stream()
            .map(
                c ->
                    new tripline.truth.ContactPlan(
                        c.name(),
                        c.channel(),
                        c.cam(),
                        c.closed(),
                        tripline.job.Role.SPARE,
                        c.makeDelay(),
                        c.wiring()))
            .toList(),
        plan.aux());
  }
}
