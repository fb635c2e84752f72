package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Certified values of the NIST Statistical Reference Datasets, univariate summary statistics. */
class MomentsTest {

  @ParameterizedTest
  @EnumSource
  void certified(StrdSets set) {
    Moments moments = Moments.of(set.data());
    double size = set.sd();
    assertThat(moments.n()).isEqualTo(set.data().length);
    assertThat(moments.mean()).isCloseTo(set.mean(), within(1e-14 * Math.abs(set.mean())));
    assertThat(moments.sd()).isCloseTo(set.sd(), within(1e-11 * size));
    assertThat(moments.lag1()).isCloseTo(set.lag1(), within(1e-11));
    assertThat(moments.sdOfMean())
        .isCloseTo(set.sd() / Math.sqrt(moments.n()), within(1e-11 * size));
  }

  /** NIST StRD NumAcc1: exactly 10000002, 1 and -0.5. */
  @Test
  void numAcc1() {
    Moments moments = Moments.of(10000001, 10000003, 10000002);
    assertThat(moments.mean()).isEqualTo(10000002);
    assertThat(moments.sd()).isEqualTo(1);
    assertThat(moments.lag1()).isEqualTo(-0.5);
  }

  /**
   * NIST StRD NumAcc2 to 4: mean c + 0.2, s = 0.1, lag-1 -0.999 exactly; the tolerance is that of
   * the data, which doubles cannot hold exactly.
   */
  @ParameterizedTest
  @CsvSource({"1, 1e-14", "1e6, 1e-10", "1e7, 1e-8"})
  void numAcc2To4(double c, double tolerance) {
    double[] values = numAcc(c);
    Moments moments = Moments.of(values);
    assertThat(moments.mean()).isCloseTo(c + 0.2, within(4 * Math.ulp(c)));
    assertThat(moments.sd()).isCloseTo(0.1, within(tolerance));
    assertThat(moments.lag1()).isCloseTo(-0.999, within(1e3 * tolerance));
  }

  /** What the certified NumAcc4 is there to catch: the difference of two large sums. */
  @Test
  void aNaiveVarianceWouldFailNumAcc4() {
    double[] values = numAcc(1e7);
    double sum = Arrays.stream(values).sum();
    double squares = Arrays.stream(values).map(x -> x * x).sum();
    double naive = Math.sqrt(Math.abs(squares - sum * sum / values.length) / (values.length - 1));
    assertThat(Math.abs(naive - 0.1)).isGreaterThan(1e-4);
  }

  private static double[] numAcc(double c) {
    double[] values = new double[1001];
    values[0] = c + 0.2;
    for (int i = 1; i < values.length; i++) {
      values[i] = c + (i % 2 == 1 ? 0.1 : 0.3);
    }
    return values;
  }

  @Test
  void aSingleValueHasNoScatter() {
    Moments one = Moments.of(7);
    assertThat(one.mean()).isEqualTo(7);
    assertThat(one.sd()).isNaN();
    assertThat(one.sdOfMean()).isNaN();
    assertThat(one.lag1()).isNaN();
    assertThat(Moments.of(7, 7).sd()).isZero();
    assertThat(Moments.of(7, 7).lag1()).isNaN();
  }

  @Test
  void shiftingAndScalingDoAsTheyShould() {
    Random random = new Random(5);
    double[] x = random.doubles(100).toArray();
    Moments plain = Moments.of(x);
    Moments moved = Moments.of(Arrays.stream(x).map(v -> 3 - 2 * v).toArray());
    assertThat(moved.mean()).isCloseTo(3 - 2 * plain.mean(), within(1e-14));
    assertThat(moved.sd()).isCloseTo(2 * plain.sd(), within(1e-14));
    assertThat(moved.lag1()).isCloseTo(plain.lag1(), within(1e-13));
  }

  @Test
  void refusesNothingAndNaN() {
    assertThatThrownBy(Moments::of).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Moments.of(1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
