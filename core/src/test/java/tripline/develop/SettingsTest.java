package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;
import tripline.travel.RecordingTrace.Zero;
import tripline.truth.Sensor;

/** Adjustments split what was seen into settings, and nothing is pooled across them. */
class SettingsTest {
  private static final Sensor SENSOR = Sensor.turns(SensorSide.HANDWHEEL, 0, 0);

  private static Development develop(HandJob job) {
    return HandJob.develop(Demo.sheet(), job.recording(SENSOR));
  }

  @Test
  void oneSessionAtTheAdjustersIsOneNewSetting() {
    HandJob job = new HandJob(Demo.actuator(), 4, 1);
    job.hand.toStop(End.CLOSED, "closed-stop");
    job.hand.to(0.8);
    job.actuator.rest(1);
    // past 0.8 and back to 0.7: both contacts of the cam change at rest, twice
    job.actuator.adjust("close", 0.6, 3);
    job.actuator.adjust("close", -0.4, 3);
    job.actuator.mark("adjusted");
    job.actuator.rest(1);
    job.hand.toStop(End.OPEN, "open-stop");
    job.hand.toStop(End.CLOSED, "closed-stop");
    Development development = develop(job);

    assertThat(development.settings()).hasSize(2);
    assertThat(development.trips().stream().filter(Trip::atRest)).hasSize(4);
    assertThat(development.trips().stream().filter(Trip::atRest))
        .allSatisfy(t -> assertThat(t.direction()).isEmpty())
        .allSatisfy(t -> assertThat(t.stroke()).isEqualTo(-1));
    assertThat(closing(development, 0)).isCloseTo(0.5, within(1e-6));
    assertThat(closing(development, 1)).isCloseTo(0.7, within(1e-6));
    // the opening stroke was interrupted at 0.8 by the adjustment: two strokes, one a setting
    assertThat(development.strokes())
        .extracting(Stroke::direction)
        .containsExactly(
            Direction.CLOSING, Direction.OPENING, Direction.OPENING, Direction.CLOSING);
    assertThat(development.strokes()).extracting(Stroke::setting).containsExactly(0, 0, 1, 1);
  }

  private static double closing(Development development, int setting) {
    return development.trips(0, setting).stream()
        .filter(t -> t.direction().equals(Optional.of(Direction.CLOSING)))
        .findFirst()
        .orElseThrow()
        .x()
        .orElseThrow()
        .value();
  }

  @Test
  void theMarkAloneSplits() {
    HandJob job = new HandJob(Demo.actuator(), 4, 2);
    job.hand.toStop(End.CLOSED, "closed-stop");
    job.hand.to(6);
    job.actuator.adjust("close", 0.1, 1);
    job.actuator.mark("adjusted");
    job.hand.toStop(End.CLOSED, "closed-stop");
    Development development = develop(job);
    assertThat(development.settings()).hasSize(2);
    assertThat(closing(development, 1)).isCloseTo(0.6, within(1e-6));
  }

  @Test
  void adjustingBeforeAnyTravelIsNoSetting() {
    HandJob job = new HandJob(Demo.actuator(), 0.6, 3);
    job.actuator.adjust("close", 0.2, 2);
    job.hand.toStop(End.CLOSED, "closed-stop");
    assertThat(develop(job).settings()).hasSize(1);
  }

  @Test
  void adjustingLastLeavesASettingWithNothingInIt() {
    HandJob job = new HandJob(Demo.actuator(), 4, 4);
    job.hand.toStop(End.CLOSED, "closed-stop");
    job.hand.to(0.8);
    job.actuator.adjust("close", 0.5, 2);
    job.actuator.rest(1);
    Development development = develop(job);
    assertThat(development.settings()).hasSize(2);
    assertThat(development.trips(0, development.judged())).isEmpty();
  }

  @Test
  void settingsRunOnOverRecordingsAndAChangeBetweenThemIsSeen() {
    HandJob first = new HandJob(Demo.actuator(), 4, 5);
    first.hand.toStop(End.CLOSED, "closed-stop");
    first.hand.to(0.8);
    HandJob same = new HandJob(Demo.actuator(), 0.8, 6);
    same.hand.toStop(End.CLOSED, "");
    HandJob moved = new HandJob(Demo.actuator().withCam("close", cam -> cam.moved(0.5)), 0.8, 7);
    moved.hand.toStop(End.CLOSED, "");

    // the model's second recording starts with play taken up as after closing: 0.2 further out
    RecordingTrace before = first.recording(SENSOR);
    RecordingTrace keptSame = same.recording(SENSOR.withOffset(0.2, 0), Zero.KEPT, 0, 0);
    RecordingTrace keptMoved = moved.recording(SENSOR.withOffset(0.2, 0), Zero.KEPT, 0, 0);
    assertThat(HandJob.develop(Demo.sheet(), before, keptSame).settings()).hasSize(1);
    Development split = HandJob.develop(Demo.sheet(), before, keptMoved);
    assertThat(split.settings()).hasSize(2);
    assertThat(split.settings().get(1).recording()).isEqualTo(1);
    assertThat(split.settings().get(1).fromS()).isZero();
  }

  @Test
  void torqueAndMotorContactsAtRestAreNoAdjustments() {
    HandJob job = new HandJob(Demo.actuator(), 4, 8);
    job.motorTo(End.CLOSED);
    job.actuator.contactor(End.OPEN, ContactState.CLOSED);
    job.actuator.rest(1);
    job.motorTo(End.OPEN).motorTo(End.CLOSED);
    Development development = develop(job);
    assertThat(development.recordings().get(0).drive()).isEqualTo(Drive.MOTOR);
    assertThat(development.trips().stream().filter(Trip::atRest)).isNotEmpty();
    assertThat(development.settings()).hasSize(1);
    assertThat(IntStream.range(0, 3).mapToObj(i -> development.strokes().get(i).setting()))
        .containsOnly(0);
  }
}
