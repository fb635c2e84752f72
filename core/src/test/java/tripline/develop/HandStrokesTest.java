package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.StrokeAnalysis;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.result.Result.FindingResult;
import tripline.sample.Drive;
import tripline.travel.Caveat;
import tripline.travel.Datum;
import tripline.travel.HardStop;
import tripline.travel.HardStop.Source;
import tripline.travel.RecordingTrace;
import tripline.truth.Path;
import tripline.truth.Sensor;
import tripline.truth.TrueChange;

/** Stops, lost motion, strokes and x of hand strokes against the model's truth. */
class HandStrokesTest {
  private static final Sensor HANDWHEEL = new Sensor(SensorSide.HANDWHEEL, 1, 0, 0, 0, 0, 7, 0);

  private static Development develop(HandJob job, Sensor sensor) {
    return HandJob.develop(Demo.sheet(HandJob.channel(sensor)), job.recording(sensor));
  }

  /** Every trip in x against the truth; opening positions count the least differential as play. */
  private static void assertTruePositions(HandJob job, Development development, double within) {
    List<TrueChange> truth = job.actuator.changes();
    assertThat(development.trips()).hasSameSizeAs(truth);
    for (int i = 0; i < truth.size(); i++) {
      Trip trip = development.trips().get(i);
      assertThat(trip.x().orElseThrow().value())
          .as("change %d, %s", i, truth.get(i))
          .isCloseTo(truth.get(i).x(), within(within));
    }
  }

  @Test
  void markedStopsGiveTheTrueDevelopment() {
    HandJob job = new HandJob(Demo.actuator(), 4, 1).fullStrokes(true);
    Development development = develop(job, HANDWHEEL);

    assertThat(development.coordinate().datum()).isEqualTo(Datum.CLOSED_STOP);
    assertThat(development.coordinate().closedStop().orElseThrow().source()).isEqualTo(Source.MARK);
    assertThat(development.coordinate().closedStop().orElseThrow().reading().value())
        .isCloseTo(7, within(1e-6));
    assertThat(development.coordinate().span().orElseThrow().value())
        .isCloseTo(Demo.SPAN, within(1e-6));
    assertThat(development.coordinate().lostMotion().orElseThrow().value())
        .isCloseTo(Demo.LOST_MOTION, within(1e-6));
    assertTruePositions(job, development, 1e-6);

    assertThat(development.strokes())
        .extracting(Stroke::direction)
        .containsExactly(Direction.CLOSING, Direction.OPENING, Direction.CLOSING);
    assertThat(development.strokes()).extracting(Stroke::number).containsExactly(0, 1, 2);
    assertThat(development.strokes()).extracting(Stroke::full).containsExactly(false, true, true);
    assertThat(development.strokes())
        .extracting(Stroke::stoppedBy)
        .containsOnly(Stroke.StoppedBy.HARD_STOP);
    assertThat(development.strokes().get(1).from()).isCloseTo(0, within(1e-6));
    assertThat(development.strokes().get(1).to()).isCloseTo(Demo.SPAN, within(1e-6));
    assertThat(development.settings()).hasSize(1);
    assertThat(development.doubts()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, -1, 0.25, -360})
  void sensorMayFallAndCountAnything(double turnsPerUnit) {
    for (SensorSide side : SensorSide.values()) {
      Sensor sensor = new Sensor(side, turnsPerUnit, 0, 0, 0, 0, 100, 0);
      HandJob job = new HandJob(Demo.actuator(), 4, 2).fullStrokes(true);
      Development development = develop(job, sensor);
      assertTruePositions(job, development, 1e-6);
      assertThat(development.coordinate().span().orElseThrow().value())
          .isCloseTo(Demo.SPAN, within(1e-6));
      assertThat(development.coordinate().lostMotion().orElseThrow().value())
          .isCloseTo(side == SensorSide.HANDWHEEL ? Demo.LOST_MOTION : 0, within(1e-6));
    }
  }

  @Test
  void ownDifferentialIsWhatACamHasBeyondTheLeast() {
    for (SensorSide side : SensorSide.values()) {
      HandJob job = new HandJob(Demo.actuator(), 4, 3).fullStrokes(true);
      Development development = develop(job, new Sensor(side, 1, 0, 0, 0, 0, 0, 0));
      List<CamDifferential> differentials = CamDifferentials.of(development, 0);
      assertThat(differentials)
          .extracting(d -> d.cam() + d.edge())
          .containsExactly("close0", "open0", "quarter0", "band1", "band0");
      assertThat(differentials)
          .extracting(d -> d.own().value())
          .usingComparatorForType(near(), Double.class)
          .containsExactly(0.0, 0.05, 0.03, 0.02, 0.02);
    }
  }

  private static Comparator<Double> near() {
    return (a, b) -> Math.abs(a - b) < 1e-6 ? 0 : Double.compare(a, b);
  }

  @Test
  void plateausOfHandStrokesAreStops() {
    HandJob job = new HandJob(Demo.actuator(), 4, 4).fullStrokes(false);
    Development development = develop(job, HANDWHEEL);
    assertThat(development.coordinate().closedStop().orElseThrow().source())
        .isEqualTo(Source.PLATEAU);
    assertThat(development.coordinate().openStop().orElseThrow().source())
        .isEqualTo(Source.PLATEAU);
    assertTruePositions(job, development, 1e-6);
  }

  @Test
  void turningBackInMidTravelIsNoStop() {
    HandJob job = new HandJob(Demo.actuator(), 4, 5);
    job.hand.toStop(End.CLOSED, "");
    job.hand.to(6);
    job.hand.toStop(End.CLOSED, "");
    job.hand.to(6);
    Development development = develop(job, HANDWHEEL);
    assertThat(development.coordinate().closedStop()).isPresent();
    assertThat(development.coordinate().openStop()).isEmpty();
    assertThat(development.coordinate().span()).isEmpty();
    assertThat(development.strokes())
        .extracting(Stroke::stoppedBy)
        .containsExactly(
            Stroke.StoppedBy.HARD_STOP,
            Stroke.StoppedBy.OPERATOR,
            Stroke.StoppedBy.HARD_STOP,
            Stroke.StoppedBy.OPERATOR);
    assertThat(development.strokes()).extracting(Stroke::full).containsOnly(false);
  }

  @Test
  void aStrokeThatStopsShortOfTheOthersIsNoTouch() {
    HandJob job = new HandJob(Demo.actuator(), 4, 6);
    job.hand.toStop(End.CLOSED, "");
    job.hand.toStop(End.OPEN, "");
    job.hand.to(0.2);
    job.hand.toStop(End.OPEN, "");
    Development development = develop(job, HANDWHEEL);
    assertThat(development.coordinate().closedStop().orElseThrow().reading().value())
        .isCloseTo(7, within(1e-6));
    assertThat(development.strokes().get(2).stoppedBy()).isEqualTo(Stroke.StoppedBy.OPERATOR);
  }

  @Test
  void pausesAndSmallTurnsBackDoNotEndAStroke() {
    HandJob job = new HandJob(Demo.actuator(), 0, 7);
    job.hand.to(2);
    job.actuator.rest(2);
    job.hand.to(4);
    job.hand.to(3.95);
    job.hand.to(6);
    Development development = develop(job, HANDWHEEL);
    assertThat(development.strokes()).hasSize(1);
    assertThat(development.strokes().get(0).direction()).isEqualTo(Direction.OPENING);
  }

  @Test
  void withNoStopAllIsRelativeToTheFirstReading() {
    HandJob job = new HandJob(Demo.actuator(), 2, 8);
    job.hand.to(8);
    job.hand.to(2);
    Development development = develop(job, HANDWHEEL);
    assertThat(development.coordinate().datum()).isEqualTo(Datum.FIRST_READING);
    assertThat(development.coordinate().lostMotion()).isPresent();
    List<TrueChange> truth = job.actuator.changes();
    double firstX = development.trips().get(0).x().orElseThrow().value();
    for (int i = 0; i < truth.size(); i++) {
      // the least differential here is that of the band cam, 0.02: it counts as lost motion
      double least =
          development.trips().get(i).direction().orElseThrow() == Direction.OPENING ? 0 : 0.02;
      assertThat(development.trips().get(i).x().orElseThrow().value() - firstX)
          .isCloseTo(truth.get(i).x() - truth.get(0).x() + least, within(1e-6));
    }
  }

  @Test
  void oneDirectionAloneAssumesLostMotionAndSaysSo() {
    HandJob job = new HandJob(Demo.actuator(), 4, 9);
    job.hand.toStop(End.CLOSED, "closed-stop");
    RecordingTrace closing = job.recording(HANDWHEEL);
    assertThat(HandJob.develop(Demo.sheet(), closing).coordinate().lostMotion()).isEmpty();

    job = new HandJob(Demo.actuator(), 0, 10);
    job.actuator.mark("closed-stop");
    job.hand.toStop(End.OPEN, "open-stop");
    Development opening = develop(job, HANDWHEEL);
    assertThat(opening.coordinate().lostMotion()).isEmpty();
    Trip limit = opening.trips(2, 0).get(0);
    Estimate backoff = opening.coordinate().span().orElseThrow().minus(limit.x().orElseThrow());
    assertThat(limit.x().orElseThrow().budget()).containsKey("play-assumed");
    // the open end's backoff does not depend on lost motion: the part cancels
    assertThat(backoff.value()).isCloseTo(0.5 - 0.05, within(1e-6));
    assertThat(backoff.budget()).doesNotContainKey("play-assumed");
  }

  @ParameterizedTest
  @EnumSource(SensorSide.class)
  void touchesAveragedHalveTheFelt(SensorSide side) {
    Sensor sensor = new Sensor(side, 1, 0, 0, 0, 0, 0, 0);
    HandJob job = new HandJob(Demo.actuator(), 4, 11, 0.01);
    for (int i = 0; i < 4; i++) {
      job.hand.toStop(End.CLOSED, "closed-stop");
      job.hand.to(3);
    }
    JobSheet sheet = Demo.sheet(HandJob.channel(sensor));
    Estimate stop =
        HandJob.develop(sheet, job.recording(sensor))
            .coordinate()
            .closedStop()
            .orElseThrow()
            .reading();
    assertThat(stop.u()).isCloseTo(Demo.STOP_U / 2, within(1e-6));
    assertThat(stop.ownU()).isZero();
  }

  /** Set right about a stop marked too soon, a valve would be accepted that is not. */
  @Test
  void aMarkThatAHandStrokePassedIsNoStop() {
    HandJob job = markedShortOfTheClosedStop(12, 1);
    job.hand.toStop(End.CLOSED, "");
    Development development = develop(job, HANDWHEEL);
    HardStop closed = development.coordinate().closedStop().orElseThrow();
    assertThat(closed.source()).isEqualTo(Source.PLATEAU);
    assertThat(closed.reading().value()).isCloseTo(7, within(1e-6));
    assertThat(development.doubts())
        .singleElement()
        .satisfies(d -> assertThat(d.message()).contains("closed-stop was passed by 0.40 turns"));
  }

  @Test
  void aSheetWithTheWrongSignIsNamed() {
    JobSheet sheet =
        Demo.sheet(HandJob.channel(new Sensor(SensorSide.DRIVE, -1, 0, 0, 0, 0, 0, 0)));
    Sensor rising = new Sensor(SensorSide.DRIVE, 1, 0, 0, 0, 0, 7, 0);
    HandJob job = new HandJob(Demo.actuator(), 4, 13).fullStrokes(true);
    RecordingTrace byHand = job.recording(rising);
    assertThat(HandJob.develop(sheet, byHand).doubts())
        .hasSize(2)
        .allSatisfy(d -> assertThat(d.kind()).isEqualTo(Caveat.Kind.ENDS_EXCHANGED));
    assertNotAccepted(sheet, byHand);

    List<FindingResult> findings =
        StrokeAnalysis.of(sheet, List.of(byHand), Optional.empty()).findings();
    assertThat(findings).extracting(FindingResult::severity).contains("fault");
    FindingResult first = findings.get(0);
    assertThat(first.message())
        .contains("A mark closed-stop was passed", "A mark open-stop was passed")
        .endsWith("turns_per_unit has the wrong sign.");
    assertThat(first.action()).contains("put the sheet right first");
    assertThat(findings.subList(1, findings.size()))
        .allSatisfy(f -> assertThat(f.code()).isNotEqualTo(first.code()));

    RecordingTrace byMotor =
        new RecordingTrace("r.csv", "", Drive.MOTOR, byHand.zero(), byHand.trace());
    Development development = HandJob.develop(sheet, byMotor);
    assertThat(development.coordinate().closedStop()).isEmpty();
    assertThat(development.coordinate().openStop()).isEmpty();
    assertThat(development.doubts())
        .singleElement()
        .satisfies(d -> assertThat(d.kind()).isEqualTo(Caveat.Kind.ENDS_EXCHANGED));
    assertNotAccepted(sheet, byMotor);
  }

  private static void assertNotAccepted(JobSheet sheet, RecordingTrace recording) {
    assertThat(StrokeAnalysis.of(sheet, List.of(recording), Optional.empty()).decision())
        .isNotEqualTo(Decision.ACCEPT);
  }

  @Test
  void aRestThatAHandStrokePassedIsNoStopEither() {
    HandJob job = markedShortOfTheClosedStop(14, 2);
    turnWithoutRest(job, 0.02);
    turnWithoutRest(job, 6);
    Development development = develop(job, HANDWHEEL);
    assertThat(development.coordinate().closedStop()).isEmpty();
  }

  private static HandJob markedShortOfTheClosedStop(int seed, double restS) {
    HandJob job = new HandJob(Demo.actuator(), 4, seed);
    job.hand.to(0.4);
    job.actuator.rest(1);
    job.actuator.mark("closed-stop");
    job.actuator.rest(restS);
    job.hand.toStop(End.OPEN, "open-stop");
    return job;
  }

  private static void turnWithoutRest(HandJob job, double handwheel) {
    int sign = handwheel > job.actuator.handwheel() ? 1 : -1;
    while ((handwheel - job.actuator.handwheel()) * sign > Path.STEP_S) {
      job.actuator.advance(job.actuator.handwheel() + sign * Path.STEP_S, sign);
    }
  }
}
