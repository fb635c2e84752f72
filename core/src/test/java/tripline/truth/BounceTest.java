package tripline.truth;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Bounce against a published bench test of mechanical switches: mean 1.557 ms, longest 6.2 ms
 * (figures as restated in secondary literature on debouncing).
 */
class BounceTest {
  @Test
  void burstsHaveThePublishedMeanAndMaximum() {
    Rng rng = new Rng(11);
    int n = 20_000;
    double sum = 0;
    double most = 0;
    for (int k = 0; k < n; k++) {
      double length = Bounce.PUBLISHED.length(rng);
      sum += length;
      most = Math.max(most, length);
    }
    assertThat(most).isBetween(0.0061, 0.0062);
    // sd of one burst is about 1.8 ms: 5 standard deviations of the mean
    assertThat(sum / n).isBetween(0.001557 - 65e-6, 0.001557 + 65e-6);
  }
}
