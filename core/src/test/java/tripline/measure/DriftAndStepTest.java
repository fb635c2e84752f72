package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DriftAndStepTest {

  /** Against SciPy 1.17.1 {@code stats.linregress}. */
  @Test
  void slopeAsAReferenceLibraryHasIt() {
    Drift drift = Drift.of(1.0, 1.2, 1.1, 1.4, 1.5);
    assertThat(drift.perStroke()).isCloseTo(0.12, within(1e-12));
    assertThat(drift.u()).isCloseTo(0.030550504633038926, within(1e-12));
    assertThat(drift.probability()).isCloseTo(0.02937049488130001, within(1e-10));
  }

  /** Against SciPy 1.17.1 {@code stats.ttest_ind} with pooled variance, times four places. */
  @Test
  void stepAsAReferenceLibraryHasIt() {
    Step step = Step.of(1.0, 1.1, 1.05, 1.6, 1.55);
    assertThat(step.after()).isEqualTo(3);
    assertThat(step.size()).isCloseTo(0.525, within(1e-12));
    assertThat(step.size() / step.u()).isCloseTo(12.6, within(1e-9));
    assertThat(step.probability()).isCloseTo(4 * 0.0010779480537874689, within(1e-9));
    assertThat(step.residualSd()).isLessThan(Drift.of(1.0, 1.1, 1.05, 1.6, 1.55).residualSd());
  }

  /** A public motion acceptance report of 2021: ten repeats of a contact with visible drift. */
  @Test
  void driftOfARealContact() {
    double[] low = {
      -0.39861, -0.37186, -0.39201, -0.36995, -0.35549, -0.34295, -0.33603, -0.33299, -0.32678,
      -0.31750
    };
    Drift drift = Drift.of(low);
    // SciPy 1.17.1 stats.linregress.
    assertThat(drift.perStroke()).isCloseTo(0.00881787878787879, within(1e-12));
    assertThat(drift.probability()).isCloseTo(1.1249784754521045e-05, within(1e-12));
    assertThat(drift.residualSd()).isLessThan(Step.of(low).residualSd());
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 10})
  void scatterAloneRaisesNoMoreAlarmsThanStated(int n) {
    Random random = new Random(100 + n);
    int series = 4_000;
    int drifts = 0;
    int steps = 0;
    for (int i = 0; i < series; i++) {
      double[] trips = random.doubles(n).map(u -> random.nextGaussian()).toArray();
      drifts += Drift.of(trips).probability() < 0.05 ? 1 : 0;
      steps += Step.of(trips).probability() < 0.05 ? 1 : 0;
    }
    // Four standard deviations of the count are 1.4 %.
    assertThat(drifts / (double) series).isCloseTo(0.05, within(0.014));
    assertThat(steps / (double) series).isBetween(0.01, 0.064);
  }

  @Test
  void threeStrokesNeedHelpFromOtherCams() {
    double[] trips = {0.500, 0.552, 0.620};
    assertThat(Drift.of(trips).probability()).isGreaterThan(0.04);
    Repeatability others = new Repeatability(0.004, 12);
    Drift drift = Drift.of(trips, others, 0);
    assertThat(drift.dof()).isEqualTo(13);
    assertThat(drift.probability()).isLessThan(1e-6);
    assertThat(Drift.of(new double[] {0.5, 0.6}, others, 0).probability()).isLessThan(1e-6);
    assertThat(Step.of(new double[] {0.5, 0.6}, others, 0).probability()).isLessThan(1e-6);
  }

  @Test
  void perfectAgreementClaimsNothingBelowTheMeasurement() {
    double[] trips = {0.500, 0.501, 0.502};
    assertThat(Drift.of(trips).probability()).isLessThan(1e-6);
    assertThat(Drift.of(trips, Repeatability.UNKNOWN, 0.01).probability()).isGreaterThan(0.5);
    double[] flat = {0.5, 0.5, 0.5};
    assertThat(Drift.of(flat).probability()).isEqualTo(1);
    assertThat(Step.of(flat).probability()).isEqualTo(1);
    assertThat(Step.of(0.5, 0.5, 0.6).probability()).isZero();
    assertThat(Step.of(new double[] {0.5, 0.5, 0.6}, Repeatability.UNKNOWN, 0.05).probability())
        .isGreaterThan(0.3);
  }

  @Test
  void reversingTheStrokesTurnsTheSignOnly() {
    double[] forth = {1.0, 1.1, 1.05, 1.6, 1.55};
    double[] back = {1.55, 1.6, 1.05, 1.1, 1.0};
    assertThat(Drift.of(back).perStroke()).isCloseTo(-Drift.of(forth).perStroke(), within(1e-12));
    assertThat(Step.of(back).size()).isCloseTo(-Step.of(forth).size(), within(1e-12));
    assertThat(Step.of(back).after()).isEqualTo(5 - Step.of(forth).after());
  }

  @Test
  void refusesTooFew() {
    assertThatThrownBy(() -> Drift.of(1, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Step.of(1, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Drift.of(new double[] {1, 2, 3}, Repeatability.UNKNOWN, -1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
