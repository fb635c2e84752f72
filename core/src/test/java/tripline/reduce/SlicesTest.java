package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.truth.Rng;

/** A window filled by slices against the same window filled reading by reading. */
class SlicesTest {
  private static final double HALF_WIDTH_S = 0.5;
  private static final double NOISE = 0.001;
  private static final double SPEED = 0.5;

  private record Both(WindowFit single, WindowFit sliced) {}

  /** By hand: ripple once and twice a turn. */
  private static Both fits(long seed, int readings) {
    Rng rng = new Rng(seed);
    double phase = rng.uniform(0, 6);
    FitWindow single =
        new FitWindow(FitWindow.Kind.READINGS, FitWindow.Reach.BOTH_SIDES, HALF_WIDTH_S, 3);
    FitWindow sliced =
        new FitWindow(FitWindow.Kind.READINGS, FitWindow.Reach.BOTH_SIDES, HALF_WIDTH_S, 3);
    Slices slices = new Slices(sliced, 48);
    for (int k = 0; k < readings; k++) {
      double tau = -1 + (2 * k + rng.uniform()) / readings;
      double t = tau * HALF_WIDTH_S;
      double x =
          3
              + SPEED * t
              + 0.02 * Math.sin(7 * t + phase)
              + 0.005 * Math.sin(14 * t)
              + NOISE * rng.gaussian();
      single.add(tau, x, 1);
      slices.add(tau, x);
    }
    slices.flush();
    assertThat(sliced.points).isEqualTo(single.points);
    assertThat(sliced.nearest).isEqualTo(single.nearest);
    double[][] priors = PathPrior.table(HALF_WIDTH_S);
    return new Both(
        new WindowFit(single, priors, NOISE, SPEED), new WindowFit(sliced, priors, NOISE, SPEED));
  }

  @ParameterizedTest
  @ValueSource(ints = {192, 1000, 5000})
  void placesAreTheSameToASmallPartOfTheirUncertainty(int readings) {
    double squares = 0;
    int runs = 20;
    for (int seed = 0; seed < runs; seed++) {
      Both both = fits(seed, readings);
      int best = best(both.single);
      assertThat(best(both.sliced)).isEqualTo(best);
      double u = Math.sqrt(both.single.variance[best]);
      double off = (both.sliced.value[best] - both.single.value[best]) / u;
      squares += off * off;
      assertThat(Math.sqrt(both.sliced.variance[best])).isCloseTo(u, within(0.02 * u));
    }
    // An independent error of that size adds its square to the variance.
    assertThat(squares / runs).isLessThan(0.03);
  }

  private static int best(WindowFit fit) {
    int best = 0;
    for (int c = 1; c < PathPrior.CANDIDATES; c++) {
      best = fit.logEvidence[c] > fit.logEvidence[best] ? c : best;
    }
    return best;
  }

  /** What is left over per degree of freedom still tells the noise. */
  @Test
  void scatterWithinSlicesCounts() {
    Both both = fits(3, 1000);
    int free = PathPrior.CANDIDATES - 1;
    WindowFit.Misfit single = both.single.misfit(free);
    WindowFit.Misfit sliced = both.sliced.misfit(free);
    assertThat(sliced.freedom()).isCloseTo(single.freedom() - 48, within(2.0));
    assertThat(sliced.residual() / sliced.freedom())
        .isCloseTo(single.residual() / single.freedom(), within(0.05));
  }
}
