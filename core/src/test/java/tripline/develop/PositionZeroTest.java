package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.travel.Datum;
import tripline.travel.HardStop;
import tripline.travel.RecordingTrace;
import tripline.travel.RecordingTrace.Zero;
import tripline.travel.Reference;
import tripline.truth.ActuatorPlan;
import tripline.truth.Sensor;

/** Several recordings, their position zero kept or lost, and stops brought by a reference. */
class PositionZeroTest {
  private static final Sensor SENSOR = Sensor.turns(SensorSide.HANDWHEEL, 0, 0);
  private static final Sensor ELSEWHERE = SENSOR.withOffset(-250.3, 0);
  private static final double FIT_U = 0.002;

  private static RecordingTrace hand() {
    return new HandJob(Demo.actuator(), 4, 1)
        .fullStrokes(true)
        .recording(SENSOR, Zero.LOST, FIT_U, 0);
  }

  private static RecordingTrace motor(ActuatorPlan plan, Sensor sensor, Zero zero) {
    return new HandJob(plan, 1, 2)
        .motorTo(End.OPEN)
        .motorTo(End.CLOSED)
        .recording(sensor, zero, FIT_U, 0);
  }

  private static List<Trip> limitTrips(Development development, int recording) {
    return development.trips(0, 0).stream().filter(t -> t.recording() == recording).toList();
  }

  @Test
  void aKeptZeroCarriesTheStopsOver() {
    Development development =
        HandJob.develop(Demo.sheet(), hand(), motor(Demo.actuator(), SENSOR, Zero.KEPT));
    Stroke closing = development.strokes().get(4);
    assertThat(closing.recording()).isEqualTo(1);
    assertThat(closing.number()).isEqualTo(1);
    assertThat(closing.full()).isTrue();
    Estimate limit = limitTrips(development, 1).get(0).x().orElseThrow();
    assertThat(limit.value()).isCloseTo(0.5, within(0.01));
    assertThat(limit.budget()).doesNotContainKey("registration:2");
  }

  @Test
  void aLostZeroIsFoundAgainByTheContactsAtACost() {
    Development development =
        HandJob.develop(Demo.sheet(), hand(), motor(Demo.actuator(), ELSEWHERE, Zero.LOST));
    assertThat(development.doubts()).isEmpty();
    Estimate limit = limitTrips(development, 1).get(0).x().orElseThrow();
    assertThat(limit.value()).isCloseTo(0.5, within(0.01));
    double cost = limit.budget().get("registration:2");
    assertThat(cost).isBetween(0.0003, 0.004);
    // what registration costs is common to the recording: coast does not pay for it
    assertThat(development.strokes().get(4).powered().orElseThrow().coast().orElseThrow().budget())
        .doesNotContainKey("registration:2");
  }

  @Test
  void registrationCoversTheTruthAsItClaims() {
    int covered = 0;
    int tried = 200;
    RecordingTrace hand = hand();
    for (int seed = 0; seed < tried; seed++) {
      RecordingTrace again =
          new HandJob(Demo.actuator(), 1, 100 + seed)
              .motorTo(End.OPEN)
              .motorTo(End.CLOSED)
              .recording(ELSEWHERE, Zero.LOST, FIT_U, 0);
      RecordingTrace first =
          new HandJob(Demo.actuator(), 4, 500 + seed)
              .fullStrokes(true)
              .recording(SENSOR, Zero.LOST, FIT_U, 0);
      Development development = HandJob.develop(Demo.sheet(), first, again);
      Estimate still =
          development.strokes().get(4).powered().orElseThrow().standstillX().orElseThrow();
      Estimate exact =
          HandJob.develop(
                  Demo.sheet(),
                  hand,
                  new HandJob(Demo.actuator(), 1, 100 + seed)
                      .motorTo(End.OPEN)
                      .motorTo(End.CLOSED)
                      .recording(SENSOR, Zero.KEPT, 0, 0))
              .strokes()
              .get(4)
              .powered()
              .orElseThrow()
              .standstillX()
              .orElseThrow();
      double registrationU = still.budget().get("registration:2");
      covered += Math.abs(still.value() - exact.value()) <= 1.96 * registrationU ? 1 : 0;
    }
    // exact stops here (stop error 0), so what is left is the registration: 95 % of 200, +- 3 sigma
    assertThat(covered).isBetween(180, 200);
  }

  @Test
  void aCamMovedInBetweenRefusesRegistrationWithItsName() {
    ActuatorPlan moved = Demo.actuator().withCam("quarter", cam -> cam.moved(0.3));
    Development development =
        HandJob.develop(Demo.sheet(), hand(), motor(moved, ELSEWHERE, Zero.LOST));
    assertThat(development.doubts()).hasSize(1);
    assertThat(development.doubts().get(0).recording()).isEqualTo(1);
    assertThat(development.doubts().get(0).message()).contains("cam quarter says 0.");
    assertThat(limitTrips(development, 1)).allSatisfy(t -> assertThat(t.x()).isEmpty());
    assertThat(limitTrips(development, 1)).allSatisfy(t -> assertThat(t.reading()).isPresent());
    // what needs no zero is still there
    assertThat(development.strokes().get(4).powered().orElseThrow().coast()).isPresent();
    assertThat(development.strokes().get(4).from()).isNaN();
  }

  @Test
  void oneCamIsNotEnough() {
    HandJob near = new HandJob(Demo.actuator(), 2, 3).motorTo(End.CLOSED);
    Development development =
        HandJob.develop(Demo.sheet(), hand(), near.recording(ELSEWHERE, Zero.LOST, 0, 0));
    assertThat(development.doubts()).hasSize(1);
    assertThat(development.doubts().get(0).message()).contains("only 1 cam");
  }

  @Test
  void aRecordingWithItsOwnStopNeedsNoCommonContacts() {
    ActuatorPlan moved = Demo.actuator().withCam("quarter", cam -> cam.moved(0.3));
    RecordingTrace again =
        new HandJob(moved, 4, 4).fullStrokes(true).recording(ELSEWHERE, Zero.LOST, 0, 0);
    Development development = HandJob.develop(Demo.sheet(), hand(), again);
    assertThat(development.doubts()).isEmpty();
    assertThat(limitTrips(development, 1).get(0).x().orElseThrow().value())
        .isCloseTo(0.5, within(1e-6));
    assertThat(limitTrips(development, 1).get(0).x().orElseThrow().budget())
        .containsKeys("stop:closed/2", "stop:open/2");
  }

  @Test
  void aWrappedReadingGoesOnWhereTheRecordingBeforeEnded() {
    PositionChannel channel =
        new PositionChannel(SensorSide.HANDWHEEL, 1, 0, 0, 0, 0, java.util.OptionalDouble.of(4));
    RecordingTrace first = new HandJob(Demo.actuator(), 4, 5).fullStrokes(true).recording(SENSOR);
    // begins at x = 12 in a reading that knows only multiples of 4
    HandJob job = new HandJob(Demo.actuator(), 0, 6);
    job.hand.toStop(End.OPEN, "");
    RecordingTrace second = job.recording(SENSOR.withOffset(8, 0), Zero.KEPT, 0, 0);
    Development development = HandJob.develop(Demo.sheet(channel), first, second);
    assertThat(limitTrips(development, 1).get(0).x().orElseThrow().value())
        .isCloseTo(0.5, within(1e-6));
  }

  private static Reference reference(JobSheet sheet, Development development) {
    HardStop closed = development.coordinate().closedStop().orElseThrow();
    HardStop open = development.coordinate().openStop().orElseThrow();
    List<Reference.Seen> seen = new ArrayList<>();
    for (Trip trip : development.trips()) {
      if (trip.direction().isPresent() && trip.channel() < sheet.contacts().size()) {
        seen.add(
            new Reference.Seen(
                sheet.contacts().get(trip.channel()).name(),
                trip.to(),
                trip.direction().get(),
                trip.reading().orElseThrow().value(),
                trip.reading().orElseThrow().u()));
      }
    }
    return new Reference(
        "before.json",
        Optional.of(new Reference.Stop(closed.reading().value(), closed.reading().u())),
        Optional.of(new Reference.Stop(open.reading().value(), open.reading().u())),
        development.coordinate().lostMotion(),
        seen);
  }

  @Test
  void aReferenceBringsTheStopsToAMotorRecordingAlone() {
    JobSheet sheet = Demo.sheet();
    Reference reference = reference(sheet, HandJob.develop(sheet, hand()));
    for (Zero zero : Zero.values()) {
      Sensor sensor = zero == Zero.KEPT ? SENSOR : ELSEWHERE;
      RecordingTrace motor = motor(Demo.actuator(), sensor, zero);
      Development development = Explanation.of(List.of(motor), sheet, Optional.of(reference));
      assertThat(development.coordinate().datum()).isEqualTo(Datum.CLOSED_STOP);
      assertThat(development.coordinate().closedStop().orElseThrow().source())
          .isEqualTo(HardStop.Source.REFERENCE);
      assertThat(development.coordinate().span().orElseThrow().value())
          .isCloseTo(Demo.SPAN, within(0.01));
      Estimate limit = limitTrips(development, 0).get(0).x().orElseThrow();
      assertThat(limit.value()).isCloseTo(0.5, within(0.01));
      assertThat(limit.budget().containsKey("registration:reference")).isEqualTo(zero == Zero.LOST);
    }
  }

  @Test
  void aReferenceThatDoesNotFitIsRefusedAndTheRestStillGiven() {
    JobSheet sheet = Demo.sheet();
    Reference reference = reference(sheet, HandJob.develop(sheet, hand()));
    ActuatorPlan moved = Demo.actuator().withCam("open", cam -> cam.moved(-0.4));
    Development development =
        Explanation.of(List.of(motor(moved, ELSEWHERE, Zero.LOST)), sheet, Optional.of(reference));
    assertThat(development.coordinate().datum()).isEqualTo(Datum.FIRST_READING);
    assertThat(development.doubts().get(0).message()).contains("before.json", "open");
    assertThat(development.strokes().get(0).powered().orElseThrow().coast()).isPresent();
  }
}
