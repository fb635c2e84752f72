package tripline.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tripline.truth.LoggerPlan;

/**
 * The study's yardstick, checked with an estimator whose performance is known: the least-squares
 * line through white noise attains the Cramér-Rao bound (Kay, Estimation Theory, example 3.7, from
 * memory), so its ratio to the floor is 1.00 and its intervals cover 95 %.
 */
class YardstickTest {
  @Test
  void aLineThroughStraightMotionAttainsTheFloor() {
    double noise = 0.01;
    ChangeStudy study =
        new ChangeStudy(
            s ->
                new TextbookReducer(
                    s.channels(), Math.hypot(noise, s.quantum() / Math.sqrt(12)), s.settleNs()),
            LoggerPlan.Inputs.LATCHED,
            new Cell.Motion[] {Cell.Motion.STRAIGHT},
            new double[] {50, 200},
            new double[] {noise},
            new double[] {0.0005});
    Map<Cell, Score> scores = study.run(1, 60);
    scores.forEach(
        (cell, score) -> {
          ChangeScore s = score.changes;
          assertThat(s.truths).as("%s", cell).isEqualTo(60 * 2 * Run.CONTACTS);
          assertThat(s.missed()).as("%s missed", cell).isZero();
          assertThat(s.invented).as("%s invented", cell).isZero();
          // 840 degrees of freedom: rms known to 2.4 %, three standard deviations
          assertThat(s.overFloor()).as("%s over floor", cell).isBetween(0.93, 1.07);
          assertThat(s.coverage()).as("%s coverage", cell).isBetween(0.93, 0.97);
        });
  }
}
