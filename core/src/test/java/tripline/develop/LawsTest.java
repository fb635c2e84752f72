package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Role;
import tripline.job.SensorSide;
import tripline.job.TripPlan;
import tripline.measure.Estimate;
import tripline.travel.Datum;
import tripline.travel.RecordingTrace;
import tripline.travel.RecordingTrace.Zero;
import tripline.truth.Sensor;

/** What must not change, or change in one way only, when the question is put differently. */
class LawsTest {
  private static final Sensor SENSOR = new Sensor(SensorSide.HANDWHEEL, 1, 0, 0, 0, 0, 3, 0);
  private static final double SAME = 1e-9;

  private static PositionChannel channel(double turnsPerUnit) {
    return new PositionChannel(
        SensorSide.HANDWHEEL, turnsPerUnit, 0, 0.001, 0, 500_000, java.util.OptionalDouble.empty());
  }

  private static List<HandJob> jobs(long seed) {
    HandJob marked = new HandJob(Demo.actuator(), 4, seed, 0.01).fullStrokes(true);
    HandJob plateaus = new HandJob(Demo.actuator(), 4, seed + 1, 0.01).fullStrokes(false);
    HandJob oneStop = new HandJob(Demo.actuator(), 4, seed + 2, 0.01);
    oneStop.hand.toStop(End.CLOSED, "closed-stop");
    oneStop.hand.to(9);
    HandJob none = new HandJob(Demo.actuator(), 2, seed + 3, 0.01);
    none.hand.to(8);
    none.hand.to(2);
    HandJob motor = new HandJob(Demo.actuator(), 2, seed + 4);
    motor.motorTo(End.OPEN).motorTo(End.CLOSED);
    return List.of(marked, plateaus, oneStop, none, motor);
  }

  /** The mirrored valve: what rises falls, what opens closes, and every name changes sides. */
  private static JobSheet mirrored(JobSheet sheet) {
    List<Cam> cams =
        sheet.cams().stream()
            .map(cam -> new Cam(cam.name(), cam.trips().stream().map(LawsTest::mirrored).toList()))
            .toList();
    List<Contact> contacts =
        sheet.contacts().stream()
            .map(
                c ->
                    new Contact(
                        c.name(),
                        c.channel(),
                        c.cam(),
                        mirrored(c.closed()),
                        mirrored(c.role()),
                        c.coversPercent()))
            .toList();
    return new JobSheet(
        sheet.job(),
        sheet.travel(),
        channel(-sheet.position().turnsPerUnit()),
        sheet.settleNs(),
        sheet.open(),
        sheet.closed(),
        cams,
        contacts,
        sheet.acceptance(),
        sheet.torqueOpening(),
        sheet.torqueClosing(),
        sheet.motorOpening(),
        sheet.motorClosing());
  }

  private static TripPlan mirrored(TripPlan plan) {
    return new TripPlan(plan.from().other(), plan.distance(), plan.tolerance(), plan.unit());
  }

  private static ClosedWhere mirrored(ClosedWhere closed) {
    return switch (closed) {
      case OPEN_SIDE -> ClosedWhere.CLOSED_SIDE;
      case CLOSED_SIDE -> ClosedWhere.OPEN_SIDE;
      default -> closed;
    };
  }

  private static Role mirrored(Role role) {
    return switch (role) {
      case LIMIT_CLOSING -> Role.LIMIT_OPENING;
      case LIMIT_OPENING -> Role.LIMIT_CLOSING;
      case BYPASS_CLOSING -> Role.BYPASS_OPENING;
      case BYPASS_OPENING -> Role.BYPASS_CLOSING;
      case LAMP_OPEN -> Role.LAMP_CLOSED;
      case LAMP_CLOSED -> Role.LAMP_OPEN;
      default -> role;
    };
  }

  private static RecordingTrace mirrored(RecordingTrace recording) {
    return MirroredTrace.of(recording);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 20, 300})
  void mirroringTheActuatorSwapsTheEnds(long seed) {
    JobSheet sheet = Demo.sheet(channel(1));
    for (HandJob job : jobs(seed)) {
      RecordingTrace recording = job.recording(SENSOR, Zero.LOST, 0.001, 0);
      Development plain = HandJob.develop(sheet, recording);
      Development mirror = HandJob.develop(mirrored(sheet), mirrored(recording));

      double about = about(plain);
      assertThat(mirror.strokes()).hasSameSizeAs(plain.strokes());
      for (int i = 0; i < plain.strokes().size(); i++) {
        Stroke a = plain.strokes().get(i);
        Stroke b = mirror.strokes().get(i);
        assertThat(b.direction()).isEqualTo(a.direction().other());
        assertThat(b.stoppedBy()).isEqualTo(a.stoppedBy());
        assertThat(b.full()).isEqualTo(a.full());
        assertThat(b.from()).isCloseTo(about - a.from(), within(SAME));
        assertThat(b.to()).isCloseTo(about - a.to(), within(SAME));
        assertThat(b.powered().flatMap(Stroke.Powered::coast).map(LawsTest::rounded))
            .isEqualTo(a.powered().flatMap(Stroke.Powered::coast).map(LawsTest::rounded));
      }
      for (int i = 0; i < plain.trips().size(); i++) {
        Estimate a = plain.trips().get(i).x().orElseThrow();
        Estimate b = mirror.trips().get(i).x().orElseThrow();
        assertThat(b.value()).isCloseTo(about - a.value(), within(SAME));
        assertThat(mirror.trips().get(i).direction())
            .isEqualTo(plain.trips().get(i).direction().map(Direction::other));
      }
      assertThat(mirror.coordinate().span().map(LawsTest::rounded))
          .isEqualTo(plain.coordinate().span().map(LawsTest::rounded));
      assertThat(mirror.coordinate().lostMotion().map(LawsTest::rounded))
          .isEqualTo(plain.coordinate().lostMotion().map(LawsTest::rounded));
      assertThat(mirror.coordinate().openStop().map(s -> s.source()))
          .isEqualTo(plain.coordinate().closedStop().map(s -> s.source()));
      assertThat(mirror.coordinate().openStop().map(s -> rounded(s.reading())))
          .isEqualTo(plain.coordinate().closedStop().map(s -> rounded(s.reading())));
    }
  }

  /** x and mirrored x add up to this. */
  private static double about(Development plain) {
    return plain.coordinate().datum() == Datum.FIRST_READING
        ? 0
        : plain.coordinate().span().map(Estimate::value).orElse(Demo.SPAN);
  }

  private static String rounded(Estimate estimate) {
    return String.format(java.util.Locale.ROOT, "%.9f +- %.9f", estimate.value(), estimate.u());
  }

  @Test
  void renamingChannelsChangesNamesOnly() {
    for (HandJob job : jobs(5)) {
      RecordingTrace recording = job.recording(SENSOR, Zero.LOST, 0, 0);
      JobSheet sheet = Demo.sheet(channel(1));
      List<Contact> contacts = new ArrayList<>();
      for (Contact c : sheet.contacts()) {
        contacts.add(
            new Contact(
                "K" + c.name(),
                "input " + c.channel(),
                c.cam(),
                c.closed(),
                c.role(),
                c.coversPercent()));
      }
      JobSheet renamed =
          new JobSheet(
              sheet.job(),
              sheet.travel(),
              sheet.position(),
              sheet.settleNs(),
              sheet.closed(),
              sheet.open(),
              sheet.cams(),
              contacts,
              sheet.acceptance(),
              sheet.torqueClosing(),
              sheet.torqueOpening(),
              sheet.motorClosing(),
              sheet.motorOpening());
      Development plain = HandJob.develop(sheet, recording);
      Development other =
          HandJob.develop(renamed, MirroredTrace.renamed(recording, renamed.channels()));
      assertThat(other.strokes()).isEqualTo(plain.strokes());
      assertThat(other.trips()).isEqualTo(plain.trips());
      assertThat(other.coordinate()).isEqualTo(plain.coordinate());
    }
  }

  @Test
  void shiftingTimeShiftsTimesOnly() {
    for (int i = 0; i < 5; i++) {
      long laterNs = 1_700_000_000_000_000_000L;
      Development plain =
          HandJob.develop(
              Demo.sheet(channel(1)), jobs(6).get(i).recording(SENSOR, Zero.LOST, 0.001, 0));
      Development later =
          HandJob.develop(
              Demo.sheet(channel(1)), jobs(6).get(i).recording(SENSOR, Zero.LOST, 0.001, laterNs));
      assertThat(later.strokes()).isEqualTo(plain.strokes());
      assertThat(later.coordinate()).isEqualTo(plain.coordinate());
      assertThat(later.settings()).isEqualTo(plain.settings());
      assertThat(later.trips())
          .extracting(Trip::x)
          .isEqualTo(plain.trips().stream().map(Trip::x).toList());
      assertThat(later.trips())
          .extracting(t -> t.change().beforeNs() - laterNs)
          .isEqualTo(plain.trips().stream().map(t -> t.change().beforeNs()).toList());
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {360, 0.001, 65536})
  void scalingTheUnitScalesReadingsOnly(double unitsPerTurn) {
    for (int i = 0; i < 5; i++) {
      HandJob job = jobs(7).get(i);
      HandJob same = jobs(7).get(i);
      Development plain =
          HandJob.develop(Demo.sheet(channel(1)), job.recording(SENSOR, Zero.LOST, 0, 0));
      Sensor scaled =
          new Sensor(SensorSide.HANDWHEEL, 1 / unitsPerTurn, 0, 0, 0, 0, 3 * unitsPerTurn, 0);
      Development other =
          HandJob.develop(
              Demo.sheet(channel(1 / unitsPerTurn)), same.recording(scaled, Zero.LOST, 0, 0));
      assertThat(other.strokes()).hasSameSizeAs(plain.strokes());
      for (int k = 0; k < plain.trips().size(); k++) {
        Trip a = plain.trips().get(k);
        Trip b = other.trips().get(k);
        assertThat(b.x().orElseThrow().value())
            .isCloseTo(a.x().orElseThrow().value(), within(1e-7));
        assertThat(b.reading().orElseThrow().value())
            .isCloseTo(
                a.reading().orElseThrow().value() * unitsPerTurn, within(1e-7 * unitsPerTurn));
      }
      assertThat(other.coordinate().span().isPresent())
          .isEqualTo(plain.coordinate().span().isPresent());
      Optional<Estimate> stop = plain.coordinate().closedStop().map(s -> s.reading());
      stop.ifPresent(
          s -> {
            Estimate there = other.coordinate().closedStop().orElseThrow().reading();
            assertThat(there.value())
                .isCloseTo(s.value() * unitsPerTurn, within(1e-7 * unitsPerTurn));
            assertThat(there.u())
                .isCloseTo(s.u() * unitsPerTurn, within(0.01 * s.u() * unitsPerTurn));
          });
    }
  }
}
