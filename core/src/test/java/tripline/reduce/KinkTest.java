package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import tripline.truth.Rng;

/** Which side of an instant tells of it: even motion, ripple, stops and starts. */
class KinkTest {
  private static final double HALF_WIDTH_S = 0.5;
  private static final int READINGS = 200;

  private static FitWindow window(DoubleUnaryOperator path, double noise) {
    Rng rng = new Rng(7);
    FitWindow window =
        new FitWindow(FitWindow.Kind.READINGS, FitWindow.Reach.BOTH_SIDES, HALF_WIDTH_S, 0);
    for (int k = 0; k < READINGS; k++) {
      double tau = -1 + (2 * k + 1.0) / READINGS;
      window.add(tau, path.applyAsDouble(tau * HALF_WIDTH_S) + noise * rng.gaussian(), 1);
    }
    return window;
  }

  /** Even until the instant, then slowing evenly to a stand within a time. */
  private static double stopped(double t, double withinS) {
    double braked = Math.min(Math.max(t, 0), withinS);
    return t <= 0 ? t : braked - braked * braked / (2 * withinS);
  }

  @Test
  void evenMotionIsToldByBothSides() {
    assertThat(Kink.movingSide(window(t -> 0.6 * t, 0.001))).isEqualTo(FitWindow.Reach.BOTH_SIDES);
    assertThat(Kink.movingSide(window(t -> -0.6 * t, 0.01))).isEqualTo(FitWindow.Reach.BOTH_SIDES);
  }

  /** Speed that ripples by 35 %, the most of the model's hands, at whatever phase. */
  @Test
  void aHandsRippleIsNoKink() {
    for (int k = 0; k < 64; k++) {
      double phase = k * Math.PI / 32;
      double w = 2 * Math.PI * 0.65;
      FitWindow window = window(t -> 0.65 * (t - 0.3 / w * Math.cos(w * t + phase)), 0.0005);
      assertThat(Kink.movingSide(window))
          .as("phase %.2f", phase)
          .isEqualTo(FitWindow.Reach.BOTH_SIDES);
    }
  }

  @Test
  void aStopIsToldByWhatWentBefore() {
    for (double within : new double[] {0.02, 0.1, 0.3}) {
      assertThat(Kink.movingSide(window(t -> 0.6 * stopped(t, within), 0.001)))
          .isEqualTo(FitWindow.Reach.BEFORE);
      assertThat(Kink.movingSide(window(t -> -0.6 * stopped(t, within), 0.001)))
          .isEqualTo(FitWindow.Reach.BEFORE);
    }
  }

  @Test
  void aStartIsToldByWhatComesAfter() {
    assertThat(Kink.movingSide(window(t -> -0.6 * stopped(-t, 0.2), 0.001)))
        .isEqualTo(FitWindow.Reach.AFTER);
  }

  @Test
  void waysGoneOnEitherSideTellTheSame() {
    assertThat(Kink.movingSide(10, 4)).isEqualTo(FitWindow.Reach.BEFORE);
    assertThat(Kink.movingSide(4, 10)).isEqualTo(FitWindow.Reach.AFTER);
    assertThat(Kink.movingSide(7, 10)).isEqualTo(FitWindow.Reach.BOTH_SIDES);
    assertThat(Kink.movingSide(0, 0)).isEqualTo(FitWindow.Reach.BOTH_SIDES);
  }
}
