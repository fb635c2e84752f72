package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoverageTest {

  private static double[] equal(int count) {
    double[] u = new double[count];
    Arrays.fill(u, 1);
    return u;
  }

  /** Exact Irwin-Hall quantiles, computed independently in exact arithmetic. */
  @ParameterizedTest
  @CsvSource({"1, 1.645448", "2, 1.901767", "3, 1.937341", "4, 1.939703", "6, 1.945754"})
  void equalRectanglesFollowIrwinHall(int count, double factor) {
    assertThat(Coverage.of(0, equal(count)).factor(0.95)).isCloseTo(factor, within(1e-6));
  }

  @Test
  void aNormalLawNeedsTheUsualFactor() {
    assertThat(Coverage.of(0.3).factor(0.95)).isCloseTo(1.959964, within(1e-6));
    assertThat(Coverage.of(0.3).halfWidth(0.95)).isCloseTo(0.587989, within(1e-6));
    assertThat(Coverage.of(0).halfWidth(0.95)).isZero();
    assertThat(Coverage.of(0).probability(0)).isEqualTo(1);
  }

  /** JCGM 101:2008 9.2.2 Table 2 and 9.2.3 Table 3: four inputs of u = 1, u = 2, 3.92 and 3.88. */
  @Test
  void supplementOneExamples() {
    Coverage normals = Coverage.of(2);
    Coverage rectangles = Coverage.of(0, equal(4));
    assertThat(normals.halfWidth(0.95)).isCloseTo(3.92, within(0.005));
    assertThat(rectangles.u()).isCloseTo(2.0, within(1e-15));
    assertThat(rectangles.halfWidth(0.95)).isCloseTo(3.88, within(0.005));
    assertThat(rectangles.halfWidth(0.95)).isCloseTo(3.879407, within(1e-6));
  }

  @Test
  void moreRectanglesThanAreHeldExactlyStayWithinTwoTenthsOfAPerCent() {
    // Irwin-Hall with twelve terms, in exact arithmetic.
    assertThat(Coverage.of(0, equal(12)).factor(0.95)).isCloseTo(1.952949, within(0.0035));
  }

  @ParameterizedTest
  @CsvSource({
    "0.1, 1, 0",
    "0.5, 1, 0",
    "1, 1, 0",
    "2, 1, 0",
    "0, 1, 0.5",
    "0.3, 1, 1",
    "0.01, 1, 0.12",
    "0.2, 1, 0.05"
  })
  void theIntervalHoldsWhatItSays(double normal, double first, double second) {
    Coverage law = Coverage.of(normal, first, second);
    double half = law.halfWidth(0.95);
    assertThat(law.probability(half)).isCloseTo(0.95, within(1e-10));
    SplittableRandom random = new SplittableRandom(42);
    int n = 200_000;
    int inside = 0;
    for (int i = 0; i < n; i++) {
      double error =
          normal * random.nextGaussian()
              + Math.sqrt(3) * (first * uniform(random) + second * uniform(random));
      inside += Math.abs(error) <= half ? 1 : 0;
    }
    // Five standard deviations of the count are 0.25 %.
    assertThat(inside / (double) n).isCloseTo(0.95, within(0.0025));
  }

  private static double uniform(SplittableRandom random) {
    return 2 * random.nextDouble() - 1;
  }

  @Test
  void probabilityRisesWithTheIntervalAndFactorWithProbability() {
    Coverage law = Coverage.of(0.2, 1, 0.4, 0.3, 0.2, 0.15);
    double before = 0;
    for (double h = 0.01; h < 6; h += 0.01) {
      double p = law.probability(h);
      assertThat(p).isBetween(before - 1e-12, 1.0);
      before = p;
    }
    assertThat(law.factor(0.99)).isGreaterThan(law.factor(0.95));
    assertThat(law.factor(0.95)).isGreaterThan(law.factor(0.5));
  }

  @Test
  void vanishingNormalPartIsTheLimitOfASmallOne() {
    double limit = Coverage.of(0, 1, 0.7).factor(0.95);
    assertThat(Coverage.of(1e-6, 1, 0.7).factor(0.95)).isCloseTo(limit, within(1e-6));
    assertThat(Coverage.of(1e-10, 1, 0.7).factor(0.95)).isCloseTo(limit, within(1e-9));
  }

  @Test
  void refusesWhatIsNoUncertainty() {
    assertThatThrownBy(() -> Coverage.of(-1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Coverage.of(1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Coverage.of(1).factor(1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Coverage.of(1).probability(-1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
