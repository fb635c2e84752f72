package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrubbsTest {

  /** NIST/SEMATECH e-Handbook 1.3.5.17: uranium masses; critical value one-sided 2.032. */
  @Test
  void handbookExample() {
    double[] masses = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    Moments moments = Moments.of(masses);
    assertThat(moments.mean()).isCloseTo(206.43375, within(1e-10));
    assertThat(moments.sd()).isCloseTo(15.852564405, within(1e-9));
    Grubbs grubbs = Grubbs.of(masses);
    assertThat(grubbs.index()).isEqualTo(7);
    assertThat(grubbs.g()).isCloseTo(2.46876461121245, within(1e-12));
    assertThat(grubbs.outlier(0.05)).isTrue();
    assertThat(Grubbs.critical(8, 0.05, Sides.ONE)).isCloseTo(2.032, within(5e-4));
  }

  /** Critical values at 5 %, computed independently. */
  @ParameterizedTest
  @CsvSource({
    "3, 1.1531, 1.1543",
    "4, 1.4625, 1.4813",
    "5, 1.6714, 1.7150",
    "6, 1.8221, 1.8871",
    "8, 2.0317, 2.1266",
    "10, 2.1761, 2.2900",
    "15, 2.4090, 2.5483",
    "20, 2.5566, 2.7082"
  })
  void criticalValues(int n, double oneSided, double twoSided) {
    assertThat(Grubbs.critical(n, 0.05, Sides.ONE)).isCloseTo(oneSided, within(5.1e-5));
    assertThat(Grubbs.critical(n, 0.05, Sides.TWO)).isCloseTo(twoSided, within(5.1e-5));
    assertThat(Grubbs.critical(n, 1e-9, Sides.TWO)).isLessThanOrEqualTo((n - 1) / Math.sqrt(n));
  }

  /**
   * A public motion acceptance report of 2021, low contact disengaging: the tenth of ten repeats is
   * an outlier, which the report's own deviation (0.00000) hides.
   */
  @Test
  void realContactWithAnOutlier() {
    double[] low = {
      -0.01605, -0.01664, -0.01916, -0.02128, -0.02128, -0.02439, -0.02381, -0.02496, -0.02437,
      -0.29179
    };
    assertThat(Moments.of(low).sd()).isCloseTo(0.085588, within(5e-7));
    Grubbs grubbs = Grubbs.of(low);
    assertThat(grubbs.index()).isEqualTo(9);
    assertThat(grubbs.g()).isCloseTo(2.84405, within(5e-6));
    assertThat(grubbs.outlier(0.05)).isTrue();
    Moments rest = Moments.of(Arrays.copyOf(low, 9));
    assertThat(rest.mean()).isCloseTo(-0.021327, within(5e-7));
    assertThat(rest.sd()).isCloseTo(0.003401, within(5e-7));
    assertThat(rest.range()).isCloseTo(0.00891, within(5e-6));
  }

  /** A coarse encoder: of values that agree within what can be measured none stands out. */
  @Test
  void agreementBeyondTheMeasurementMakesNoOutlier() {
    double[] trips = {0.5, 0.5, 0.5, 0.5, 0.5, 0.501};
    assertThat(Grubbs.of(trips).outlier(0.01)).isTrue();
    assertThat(Grubbs.of(trips, 0.002).outlier(0.05)).isFalse();
    assertThat(Grubbs.of(trips, 0.002).index()).isEqualTo(5);
    assertThat(Grubbs.of(trips, 0.002).g()).isCloseTo(0.001 * 5 / 6 / 0.002, within(1e-9));
    assertThatThrownBy(() -> Grubbs.of(trips, -1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void equalValuesHaveNoOutlierAndTwoNoTest() {
    assertThat(Grubbs.of(1, 1, 1).g()).isZero();
    assertThat(Grubbs.of(1, 1, 1).outlier(0.05)).isFalse();
    assertThatThrownBy(() -> Grubbs.of(1, 2)).isInstanceOf(IllegalArgumentException.class);
  }
}
