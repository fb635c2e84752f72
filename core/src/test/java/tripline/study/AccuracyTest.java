package tripline.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tripline.truth.LoggerPlan;

/**
 * A small accuracy study with fixed seeds. Bounds allow three standard deviations of what so few
 * changes can tell; the full study is {@link AccuracyStudy}.
 */
class AccuracyTest {
  private static final int RUNS = 6;

  private static ChangeScore pooled(Cell.Motion motion, double[] noises, double[] resolutions) {
    ChangeStudy study =
        new ChangeStudy(
            AccuracyStudy::reduction,
            LoggerPlan.Inputs.LATCHED,
            new Cell.Motion[] {motion},
            new double[] {50, 200, 1000},
            noises,
            resolutions);
    ChangeScore all = new ChangeScore();
    study.run(1, RUNS).values().forEach(s -> all.merge(s.changes));
    assertThat(all.missed()).as("missed").isZero();
    assertThat(all.invented).as("invented").isZero();
    return all;
  }

  @Test
  void straightMotionComesNearTheFloor() {
    ChangeScore all =
        pooled(Cell.Motion.STRAIGHT, new double[] {0.001, 0.01}, new double[] {0.0005});
    assertThat(all.truths).isEqualTo(RUNS * 6 * 2 * Run.CONTACTS);
    // rms of some 500 degrees of freedom is known to 3 %
    assertThat(all.overFloor()).isLessThan(1.15 * 1.09);
    assertThat(all.coverage()).isBetween(0.92, 0.98);
  }

  @Test
  void handRippleCostsLittle() {
    ChangeScore all = pooled(Cell.Motion.RIPPLE, new double[] {0.001}, new double[] {0.0005});
    assertThat(all.overFloor()).isLessThan(1.6);
    assertThat(all.coverage()).isBetween(0.90, 0.99);
  }

  @Test
  void coarseCountsAreBeatenByTheirMoments() {
    ChangeScore all = pooled(Cell.Motion.STRAIGHT, new double[] {0.001}, new double[] {1 / 24.0});
    assertThat(all.rms()).isLessThan(1 / 24.0 / 8);
    assertThat(all.coverage()).isBetween(0.91, 0.99);
  }

  /** Readings that flicker between two counts: every edge timed, none at the window's ends. */
  @Test
  void flickeringCountsAreStraightWhereTheMotionIs() {
    ChangeStudy study =
        new ChangeStudy(
            AccuracyStudy::reduction,
            LoggerPlan.Inputs.LATCHED,
            new Cell.Motion[] {Cell.Motion.STRAIGHT},
            new double[] {5000},
            new double[] {0.01},
            new double[] {1 / 24.0});
    ChangeScore all = new ChangeScore();
    study.run(1, 25).values().forEach(s -> all.merge(s.changes));
    // By what an edge is worth: variance v dt s / sqrt(pi) each, some 14 of them in a window.
    assertThat(all.rms()).isLessThan(0.0003);
    assertThat(AccuracyStudy.covers(all.coverage(), all.found)).isTrue();
  }

  /** Each cell draws from seeds of its own, which no run of the virtual machine may alter. */
  @Test
  void cellsAreNumberedAlikeInEveryRun() {
    assertThat(new Cell(Cell.Motion.STRAIGHT, 5000, 0.01, 1 / 24.0).number())
        .isEqualTo(-50278073649300L);
    assertThat(Arrays.stream(Cell.Motion.values()).map(m -> new Cell(m, 50, 0, 1).number()))
        .doesNotHaveDuplicates();
  }

  @Test
  void backoffsKeepTheirWordAndLimitsAreNotAccepted() {
    ChangeStudy study =
        new ChangeStudy(
                AccuracyStudy::reduction,
                LoggerPlan.Inputs.LATCHED,
                new Cell.Motion[] {Cell.Motion.RIPPLE},
                new double[] {50},
                new double[] {0.001},
                new double[] {0.005})
            .judging();
    BackoffScore all = new BackoffScore();
    study.run(1, 100).values().forEach(s -> all.merge(s.backoffs));
    assertThat(all.count).isEqualTo(200);
    assertThat(all.without).isLessThan(5);
    assertThat(AccuracyStudy.covers(all.coverage(), all.count - all.without)).isTrue();
    assertThat(all.cautious()).isTrue();
  }
}
