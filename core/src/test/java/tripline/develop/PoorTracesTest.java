package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.job.JobSheet;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.reduce.MarkPoint;
import tripline.reduce.Movement;
import tripline.reduce.Outline;
import tripline.reduce.Place;
import tripline.reduce.Stopping;
import tripline.reduce.Trace;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.travel.Datum;
import tripline.travel.RecordingTrace;
import tripline.truth.Rng;

/** Recordings with little or nonsense in them give little, never an exception. */
class PoorTracesTest {
  private static final Mark[] MARKS = Mark.values();
  private static final Change.Motion[] MOTIONS = Change.Motion.values();

  private static RecordingTrace recording(
      Drive drive, List<Movement> movements, List<Change> changes, List<MarkPoint> marks) {
    JobSheet sheet = Demo.sheet();
    long all = (1L << sheet.channels().size()) - 1;
    return new RecordingTrace(
        "poor.csv",
        "",
        drive,
        RecordingTrace.Zero.LOST,
        new Trace(
            sheet.channels(),
            0,
            60_000_000_000L,
            1,
            1,
            0,
            0,
            1_000_000,
            movements,
            changes,
            List.of(),
            marks,
            List.of(),
            List.of(),
            new Trace.States(all, 0),
            new Trace.States(all, 0),
            new Outline(List.of())));
  }

  @Test
  void noRecordingIsTheCallersMistake() {
    assertThatThrownBy(() -> Explanation.of(List.of(), Demo.sheet(), Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @EnumSource(Drive.class)
  void nothingGivesNothing(Drive drive) {
    Development development =
        HandJob.develop(Demo.sheet(), recording(drive, List.of(), List.of(), List.of()));
    assertThat(development.coordinate().datum()).isEqualTo(Datum.FIRST_READING);
    assertThat(development.strokes()).isEmpty();
    assertThat(development.trips()).isEmpty();
    assertThat(development.settings()).hasSize(1);
  }

  @Test
  void changesWithoutPositionKeepTheirTimes() {
    Change change =
        new Change(
            0,
            ContactState.OPEN,
            1_000_000_000,
            1_001_000_000,
            1_001_000_000,
            0,
            Place.UNKNOWN,
            Change.Motion.UNKNOWN);
    Development development =
        HandJob.develop(Demo.sheet(), recording(Drive.HAND, List.of(), List.of(change), List.of()));
    Trip trip = development.trips().get(0);
    assertThat(trip.timeS()).isEqualTo(1.0005);
    assertThat(trip.x()).isEmpty();
    assertThat(trip.reading()).isEmpty();
    assertThat(trip.direction()).isEmpty();
    assertThat(trip.atRest()).isFalse();
  }

  /** Whatever order moves, rests, changes and marks come in. */
  @Test
  void nonsenseIsSurvivedAndCounted() {
    for (int seed = 0; seed < 2_000; seed++) {
      Rng rng = new Rng(seed);
      List<Movement> movements = movements(rng);
      List<Change> changes = changes(rng);
      List<MarkPoint> marks = marks(rng);
      List<RecordingTrace> recordings = new ArrayList<>();
      for (int r = rng.below(3); r >= 0; r--) {
        recordings.add(
            recording(rng.chance(0.5) ? Drive.HAND : Drive.MOTOR, movements, changes, marks));
      }
      Development development = Explanation.of(recordings, Demo.sheet(), Optional.empty());
      assertThat(development.trips()).hasSize(recordings.size() * changes.size());
      assertThat(development.strokes())
          .allSatisfy(s -> assertThat(s.setting()).isLessThan(development.settings().size()));
      for (int c = 0; c < Demo.sheet().contacts().size(); c++) {
        for (var direction : tripline.job.Direction.values()) {
          List<Stretch> stretches =
              DevelopmentChart.of(development, development.judged()).stretches(c, direction);
          for (int i = 1; i < stretches.size(); i++) {
            assertThat(stretches.get(i).from()).isEqualTo(stretches.get(i - 1).to());
          }
        }
      }
      CamDifferentials.of(development, development.judged());
    }
  }

  private static List<Movement> movements(Rng rng) {
    List<Movement> movements = new ArrayList<>();
    long at = 0;
    double reading = rng.uniform(-5, 5);
    for (int i = rng.below(12); i > 0; i--) {
      long to = at + 1 + rng.below(2_000_000) * 1_000L;
      if (rng.chance(0.5)) {
        movements.add(
            new Movement.Rest(
                at,
                to,
                reading,
                0.01,
                reading,
                reading,
                rng.chance(0.5) ? Movement.Grain.COUNT : Movement.Grain.NOISE));
      } else {
        double next = reading + rng.uniform(-8, 8) * (rng.chance(0.3) ? 0.005 : 1);
        movements.add(
            new Movement.Move(
                at,
                to,
                reading,
                next,
                next >= reading ? 1 : -1,
                new Movement.Speed(rng.chance(0.1) ? Double.NaN : 1, Double.NaN, 0),
                rng.chance(0.5)
                    ? Stopping.NONE
                    : new Stopping(at, 0, Double.NaN, Double.NaN, to, 0, next, 0.001, 0)));
        reading = next;
      }
      at = to;
    }
    return movements;
  }

  private static List<Change> changes(Rng rng) {
    List<Change> changes = new ArrayList<>();
    long at = 0;
    for (int i = rng.below(20); i > 0; i--) {
      at += rng.below(1_500_000) * 1_000L;
      Place place =
          rng.chance(0.2)
              ? Place.UNKNOWN
              : new Place(
                  rng.uniform(-10, 10),
                  0.01,
                  Shape.NORMAL,
                  rng.chance(0.1) ? Double.NaN : 0.5,
                  Double.NaN,
                  3);
      changes.add(
          new Change(
              rng.below(10),
              rng.chance(0.5) ? ContactState.OPEN : ContactState.CLOSED,
              at,
              at + rng.below(1_000_000),
              at + 1_000_000,
              0,
              place,
              MOTIONS[rng.below(MOTIONS.length)]));
    }
    return changes;
  }

  private static List<MarkPoint> marks(Rng rng) {
    List<MarkPoint> marks = new ArrayList<>();
    for (int i = rng.below(4); i > 0; i--) {
      Mark mark = MARKS[rng.below(MARKS.length)];
      marks.add(new MarkPoint(rng.below(20_000) * 1_000_000L, mark, "", Place.UNKNOWN));
    }
    return marks;
  }
}
