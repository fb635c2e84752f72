package tripline.accept;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.assess.Assessment;
import tripline.assess.Bench;
import tripline.assess.Sheets;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.Direction;
import tripline.sample.Drive;

class FullStrokeTest {
  private static final double END = Sheets.SPAN;

  private static Bench turning(double... places) {
    Bench bench = new Bench(Sheets.standard());
    for (int i = 1; i < places.length; i++) {
      bench.run(places[i - 1], places[i], Drive.HAND, StoppedBy.OPERATOR);
    }
    return bench;
  }

  private static List<FullStroke> strokes(double... places) {
    return FullStroke.of(turning(places).build(), 0);
  }

  @Test
  void fromStopToStopCounts() {
    assertThat(strokes(0, END, 0))
        .extracting(FullStroke::direction)
        .containsExactly(Direction.OPENING, Direction.CLOSING);
  }

  @Test
  void betweenTheLimitsOfAMotorCounts() {
    assertThat(strokes(0.4, END - 0.4, 0.4)).hasSize(2);
  }

  @Test
  void aTurnBackToChangeGripDoesNotBreakIt() {
    List<FullStroke> strokes = strokes(0, 7, 6.4, 20, 19.5, END, 0);
    assertThat(strokes).hasSize(2);
    assertThat(strokes.get(0).parts()).hasSize(5);
  }

  /** The limit changes at 30.5, beyond the turn back: the stroke is not over before that. */
  @Test
  void aTurnBackAtTheVeryEndDoesNotBreakIt() {
    Bench bench = turning(0, 30.2, 29.8, END, 0);
    assertThat(FullStroke.of(bench.build(), 0)).hasSize(2);
    SettingAcceptance accepted = SettingAcceptance.of(Assessment.of(bench.build()));
    assertThat(accepted.trips())
        .allSatisfy(t -> assertThat(t.series().orElseThrow().n()).as(t.target().cam()).isOne());
  }

  @Test
  void rockingAtAnEndAddsNoStroke() {
    assertThat(strokes(0, END, END - 0.8, END, END - 0.8, END, 0)).hasSize(2);
  }

  @Test
  void partialApproachesDoNotCount() {
    assertThat(strokes(3, 0, 3, 0)).isEmpty();
    assertThat(strokes(15, END, 15, END)).isEmpty();
    assertThat(strokes(15, 0, END))
        .extracting(FullStroke::direction)
        .containsExactly(Direction.OPENING);
  }

  @Test
  void whoTurnsBackFarBeginsAnew() {
    assertThat(strokes(0, 12, 9, END)).isEmpty();
    assertThat(strokes(0, 12, 0, END)).hasSize(1);
  }

  @Test
  void strokesOfAnotherSettingDoNotCount() {
    Bench bench = turning(0, END, 0);
    bench.runs.set(1, new Bench.Run(END, 0, Drive.HAND, StoppedBy.OPERATOR, 1));
    bench.runs.add(new Bench.Run(0, END, Drive.HAND, StoppedBy.OPERATOR, 1));
    assertThat(FullStroke.of(bench.build(), 1)).hasSize(2);
    assertThat(FullStroke.of(bench.build(), 0)).hasSize(1);
  }

  /** Passed three times on one stroke: the first counts, the others stay in sight. */
  @Test
  void aStrokeThatTurnsBackOverATripPointGivesOneValue() {
    SettingAcceptance accepted =
        SettingAcceptance.of(Assessment.of(turning(0, END, 7.6, 8, 0, END, 0).build()));
    assertThat(accepted.closing()).isEqualTo(2);
    TripSeries quarter =
        accepted.series().stream()
            .filter(s -> s.contact().contact().name().equals("41-42"))
            .filter(s -> s.direction() == Direction.CLOSING)
            .findFirst()
            .orElseThrow();
    assertThat(quarter.n()).isEqualTo(2);
    assertThat(quarter.aside()).hasSize(1);
    assertThat(quarter.counted().get(0).stroke().number()).isEqualTo(1);
  }
}
