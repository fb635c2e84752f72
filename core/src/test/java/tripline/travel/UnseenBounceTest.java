package tripline.travel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.truth.Rng;

/** Mean and spread of the hidden delay against a simulation of what the formulas describe. */
class UnseenBounceTest {
  private static final double MEAN_S = 0.001557;

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.02, 0.05, 0.2})
  void meanAndSpreadAreThoseOfBurstsThrownAtSamples(double gapS) {
    Rng rng = new Rng(77);
    int n = 400_000;
    double sum = 0;
    double squares = 0;
    for (int k = 0; k < n; k++) {
      double burstS = -MEAN_S * StrictMath.log(1 - rng.uniform());
      double hidden = rng.chance(Math.min(1, burstS / gapS) / 2) ? (gapS + burstS) / 2 : 0;
      sum += hidden;
      squares += hidden * hidden;
    }
    double mean = sum / n;
    double sd = Math.sqrt(squares / n - mean * mean);
    assertThat(UnseenBounce.lateS(gapS)).isCloseTo(mean, percent(2.5));
    assertThat(UnseenBounce.uS(gapS)).isCloseTo(sd, percent(2.5));
  }

  @Test
  void closeSamplesHideLessThanTheirDistance() {
    for (double gapS = 1e-5; gapS < 0.01; gapS *= 1.3) {
      assertThat(UnseenBounce.lateS(gapS)).isPositive().isLessThan(0.5 * gapS);
      assertThat(UnseenBounce.uS(gapS)).isPositive().isLessThan(gapS);
    }
    assertThat(UnseenBounce.lateS(0)).isZero();
    assertThat(UnseenBounce.uS(0)).isZero();
  }

  private static org.assertj.core.data.Percentage percent(double percent) {
    return org.assertj.core.data.Percentage.withPercentage(percent);
  }
}
