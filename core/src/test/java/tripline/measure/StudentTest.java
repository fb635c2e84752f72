package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** JCGM 100:2008 Table G.2, and G.4.1 with the examples that use it. */
class StudentTest {
  private static final double ONE_SIGMA = 0.6826894921370859;
  private static final double TWO_SIGMA = 0.9544997361036416;
  private static final double THREE_SIGMA = 0.9973002039367398;

  /** Table G.2; columns 68.27, 95.45 and 99.73 stand for exactly one, two and three sigma. */
  @ParameterizedTest
  @CsvSource({
    "1, 1.8373, 6.3138, 12.7062, 13.9677, 63.6567, 235.8015",
    "2, 1.3213, 2.9200, 4.3027, 4.5265, 9.9248, 19.2067",
    "3, 1.1969, 2.3534, 3.1824, 3.3068, 5.8409, 9.2189",
    "4, 1.1416, 2.1318, 2.7764, 2.8693, 4.6041, 6.6202",
    "5, 1.1105, 2.0150, 2.5706, 2.6486, 4.0321, 5.5071",
    "9, 1.0587, 1.8331, 2.2622, 2.3198, 3.2498, 4.0943",
    "10, 1.0526, 1.8125, 2.2281, 2.2837, 3.1693, 3.9569",
    "16, 1.0322, 1.7459, 2.1199, 2.1689, 2.9208, 3.5441",
    "19, 1.0270, 1.7291, 2.0930, 2.1405, 2.8609, 3.4472",
    "20, 1.0256, 1.7247, 2.0860, 2.1330, 2.8453, 3.4222",
    "Infinity, 1.0000, 1.6449, 1.9600, 2.0000, 2.5758, 3.0000"
  })
  void tableG2(
      double nu, double one, double p90, double p95, double two, double p99, double three) {
    assertThat(Student.coverageFactor(ONE_SIGMA, nu)).isCloseTo(one, within(5.1e-5));
    assertThat(Student.coverageFactor(0.90, nu)).isCloseTo(p90, within(5.1e-5));
    assertThat(Student.coverageFactor(0.95, nu)).isCloseTo(p95, within(5.1e-5));
    assertThat(Student.coverageFactor(TWO_SIGMA, nu)).isCloseTo(two, within(5.1e-5));
    assertThat(Student.coverageFactor(0.99, nu)).isCloseTo(p99, within(5.1e-5));
    assertThat(Student.coverageFactor(THREE_SIGMA, nu)).isCloseTo(three, within(5.1e-5));
  }

  @Test
  void probabilityUndoesTheFactor() {
    double t = Student.coverageFactor(0.95, 4);
    assertThat(Student.twoSidedProbability(t, 4)).isCloseTo(0.05, within(1e-12));
    assertThat(Student.twoSidedProbability(-t, 4)).isCloseTo(0.05, within(1e-12));
    assertThat(Student.twoSidedProbability(0, 4)).isEqualTo(1);
    assertThat(Student.twoSidedProbability(Double.POSITIVE_INFINITY, 4)).isZero();
  }

  /**
   * JCGM 100 G.4.1 example (from memory; published 1.03 %, 19.0, 2.2 %). The published integer 19
   * comes from the rounded u_c; unrounded parts give 18.9987 and truncate to 18.
   */
  @Test
  void effectiveDegreesOfFreedomG41() {
    double[] u = {0.25, 0.57, 0.82};
    double[] nu = {9, 4, 14};
    double dof = WelchSatterthwaite.degreesOfFreedom(u, nu);
    assertThat(dof).isCloseTo(18.998742, within(1e-6));
    assertThat(WelchSatterthwaite.truncated(dof)).isEqualTo(18);
    double uc = Math.sqrt(0.25 * 0.25 + 0.57 * 0.57 + 0.82 * 0.82);
    assertThat(uc).isCloseTo(1.0294659, within(1e-7));
    assertThat(dof * Math.pow(1.03 / uc, 4)).isCloseTo(19.038, within(1e-3));
    assertThat(uc * Student.coverageFactor(0.95, 19)).isCloseTo(2.1547, within(1e-4));
  }

  /** JCGM 100 H.1.6, end gauge: comparator part (published 9.7 nm, 25.6 from the rounded 9.7). */
  @Test
  void endGauge() {
    double dof =
        WelchSatterthwaite.degreesOfFreedom(new double[] {5.8, 3.9, 6.7}, new double[] {24, 5, 8});
    assertThat(dof).isCloseTo(25.447, within(1e-3));
    assertThat(dof * Math.pow(9.7 / 9.681942, 4)).isCloseTo(25.6, within(0.05));
    // H.1.7, total: 16.7 published (from memory), 93 nm at 99 %.
    double[] parts = {25, 9.7, 2.9, 16.6};
    double[] nu = {18, 25.6, 50, 2};
    double total = WelchSatterthwaite.degreesOfFreedom(parts, nu);
    double squares = 25 * 25 + 9.7 * 9.7 + 2.9 * 2.9 + 16.6 * 16.6;
    assertThat(total * Math.pow(1002 / squares, 2)).isCloseTo(16.76, within(0.05));
    assertThat(32 * Student.coverageFactor(0.99, 16)).isCloseTo(93, within(0.6));
  }

  @Test
  void partsKnownOutrightAddNoDoubt() {
    double[] u = {0.57, 0.25};
    assertThat(WelchSatterthwaite.degreesOfFreedom(u, new double[] {9, Double.POSITIVE_INFINITY}))
        .isCloseTo(12.8, within(0.05));
    assertThat(WelchSatterthwaite.degreesOfFreedom(new double[] {0, 0}, new double[] {1, 1}))
        .isInfinite();
    assertThatThrownBy(() -> WelchSatterthwaite.degreesOfFreedom(u, new double[] {9}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> WelchSatterthwaite.degreesOfFreedom(u, new double[] {9, 0}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Student.coverageFactor(0.95, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Student.twoSidedProbability(Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
