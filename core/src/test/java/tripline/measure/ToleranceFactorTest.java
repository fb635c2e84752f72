package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceFactorTest {

  /**
   * ISO 16269-6 annex tables for unknown mean and deviation, from an open transcription; rounded up
   * at the fourth decimal. Columns: one-sided 90/95, 95/95, 99/95, two-sided 90/95, 95/95, 99/95,
   * 95/99 (share/confidence in per cent).
   */
  @ParameterizedTest
  @CsvSource({
    "3, 6.1553, 7.6560, 10.5528, 8.3060, 9.7888, 12.6472, 22.1308",
    "4, 4.1620, 5.1439, 7.0424, 5.3681, 6.3411, 8.2207, 11.1178",
    "5, 3.4067, 4.2027, 5.7411, 4.2907, 5.0769, 6.5980, 7.8698",
    "6, 3.0063, 3.7077, 5.0620, 3.7326, 4.4222, 5.7578, 6.3735",
    "8, 2.5820, 3.1873, 4.3539, 3.1561, 3.7456, 4.8893, 4.9677",
    "10, 2.3547, 2.9110, 3.9812, 2.8564, 3.3935, 4.4370, 4.2942",
    "12, 2.2102, 2.7364, 3.7471, 2.6703, 3.1747, 4.1556, 3.8959",
    "20, 1.9260, 2.3961, 3.2952, 2.3188, 2.7604, 3.6210, 3.1838",
    "30, 1.7774, 2.2199, 3.0640, 2.1452, 2.5549, 3.3546, 2.8510",
    "50, 1.6456, 2.0650, 2.8625, 1.9991, 2.3816, 3.1288, 2.5805"
  })
  void isoTables(
      int n, double o90, double o95, double o99, double t90, double t95, double t99, double c99) {
    rounded(ToleranceFactor.oneSided(n, 0.90, 0.95), o90);
    rounded(ToleranceFactor.oneSided(n, 0.95, 0.95), o95);
    rounded(ToleranceFactor.oneSided(n, 0.99, 0.95), o99);
    rounded(ToleranceFactor.twoSided(n, 0.90, 0.95), t90);
    rounded(ToleranceFactor.twoSided(n, 0.95, 0.95), t95);
    rounded(ToleranceFactor.twoSided(n, 0.99, 0.95), t99);
    rounded(ToleranceFactor.twoSided(n, 0.95, 0.99), c99);
  }

  private static void rounded(double exact, double table) {
    assertThat(exact).isBetween(table - 1.0e-4, table + 1e-9);
  }

  /** Exact values computed independently; the transcription's entries for n = 100 are wrong. */
  @Test
  void exactValues() {
    assertThat(ToleranceFactor.twoSided(10, 0.95, 0.95)).isCloseTo(3.3934295, within(5e-8));
    assertThat(ToleranceFactor.oneSided(10, 0.95, 0.95)).isCloseTo(2.9109634, within(5e-8));
    assertThat(ToleranceFactor.twoSided(100, 0.90, 0.95)).isCloseTo(1.87481, within(5e-6));
    assertThat(ToleranceFactor.twoSided(100, 0.95, 0.95)).isCloseTo(2.23388, within(5e-6));
    assertThat(ToleranceFactor.twoSided(100, 0.99, 0.95)).isCloseTo(2.93555, within(5e-6));
    assertThat(ToleranceFactor.twoSided(43, 0.90, 0.99)).isCloseTo(2.2228252, within(5e-8));
    assertThat(ToleranceFactor.oneSided(43, 0.90, 0.99)).isCloseTo(1.8739536, within(5e-8));
  }

  /**
   * NIST/SEMATECH e-Handbook 7.2.6.3, N = 43, 90 % with confidence 99 %: its approximations give
   * 2.217 and 1.8752, which an exact factor must not reproduce.
   */
  @Test
  void handbookApproximationsAreNotTheExactFactors() {
    double z = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.95);
    double chi2 = ChiSquaredDistribution.of(42).inverseCumulativeProbability(0.01);
    assertThat(chi2).isCloseTo(23.650095, within(1e-6));
    double twoSided = z * Math.sqrt(42 * (1 + 1 / 43.0) / chi2);
    assertThat(twoSided).isCloseTo(2.2173159, within(1e-7));
    double zShare = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.90);
    double zConfidence = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.99);
    double a = 1 - zConfidence * zConfidence / (2 * 42);
    double b = zShare * zShare - zConfidence * zConfidence / 43;
    assertThat(a).isCloseTo(0.9355727, within(1e-7));
    double oneSided = (zShare + Math.sqrt(zShare * zShare - a * b)) / a;
    assertThat(oneSided).isCloseTo(1.8751896, within(1e-6));
    assertThat(Math.abs(ToleranceFactor.twoSided(43, 0.90, 0.99) - twoSided)).isGreaterThan(5e-3);
    assertThat(Math.abs(ToleranceFactor.oneSided(43, 0.90, 0.99) - oneSided)).isGreaterThan(1e-3);
  }

  /** ISO 16269-6 worked example (from memory): twelve breaking loads, lower limit 154.7. */
  @Test
  void breakingLoads() {
    Moments loads =
        Moments.of(
            228.6, 232.7, 238.8, 317.2, 315.8, 275.1, 222.2, 236.7, 224.7, 251.2, 210.4, 270.7);
    assertThat(loads.mean()).isCloseTo(252.008, within(5e-4));
    assertThat(loads.sd()).isCloseTo(35.545, within(5e-4));
    double lower = loads.mean() - ToleranceFactor.oneSided(12, 0.95, 0.95) * loads.sd();
    assertThat(lower).isCloseTo(154.74, within(0.01));
  }

  /** Noncentral t against SciPy 1.17.1 {@code stats.nct.cdf}. */
  @ParameterizedTest
  @CsvSource({
    "1.5, 4, 2.0, 0.2980823590794077",
    "-0.5, 2, 1.0, 0.07969573993151502",
    "8, 2, 2.85, 0.8707087918179826",
    "20, 99, 23.26, 0.029385149898129424",
    "0, 5, 0.7, 0.24196365222307303",
    "40, 1, 2.33, 0.9534971213533591"
  })
  void noncentralT(double t, double nu, double delta, double probability) {
    assertThat(NoncentralT.cdf(t, nu, delta)).isCloseTo(probability, within(1e-9));
  }

  @Test
  void withoutNoncentralityItIsStudents() {
    assertThat(NoncentralT.quantile(0.975, 5, 0))
        .isCloseTo(Student.coverageFactor(0.95, 5), within(1e-8));
    assertThat(NoncentralT.quantile(0.025, 5, 0))
        .isCloseTo(-Student.coverageFactor(0.95, 5), within(1e-8));
  }

  @Test
  void factorsShrinkTowardThePopulations() {
    double before = Double.POSITIVE_INFINITY;
    for (int n = 2; n <= 100; n += 7) {
      double k = ToleranceFactor.twoSided(n, 0.95, 0.95);
      assertThat(k).isLessThan(before).isGreaterThan(1.959964);
      before = k;
    }
    assertThat(ToleranceFactor.oneSided(2, 0.9, 0.025)).isNegative();
  }

  @Test
  void refusesOneValueAndCertainty() {
    assertThatThrownBy(() -> ToleranceFactor.twoSided(1, 0.95, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ToleranceFactor.twoSided(5, 1, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ToleranceFactor.oneSided(5, 0.95, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
