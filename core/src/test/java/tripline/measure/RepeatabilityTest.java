package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ISO 5725 limits (clauses from memory, digits computed), JCGM 100 E.4.3. */
class RepeatabilityTest {

  /** ISO 5725-6: r = 1.96 sqrt 2 s_r, published as 2.8 s_r. */
  @Test
  void repeatabilityLimit() {
    assertThat(new Repeatability(1, 4).limit()).isCloseTo(2.771808, within(5e-7));
    assertThat(new Repeatability(0.01, 4).limit()).isCloseTo(0.02771808, within(5e-9));
  }

  /** ISO 5725-6 critical range factors, published 2.8 3.3 3.6 3.9 4.0 4.3 4.5. */
  @ParameterizedTest
  @CsvSource({
    "2, 2.7718",
    "3, 3.3145",
    "4, 3.6332",
    "5, 3.8577",
    "6, 4.0301",
    "8, 4.2863",
    "10, 4.4741"
  })
  void criticalRange(int n, double factor) {
    assertThat(new Repeatability(1, 4).criticalRange(n)).isCloseTo(factor, within(5.1e-5));
  }

  /** JCGM 100 Table E.1 (from memory): 76, 52, 42, 36 and 24 per cent. */
  @ParameterizedTest
  @CsvSource({"2, 0.76", "3, 0.52", "4, 0.42", "5, 0.36", "10, 0.24"})
  void howLittleAFewStrokesSayOfScatter(int n, double relative) {
    assertThat(Repeatability.relativeUncertainty(n)).isCloseTo(relative, within(0.005));
  }

  @ParameterizedTest
  @CsvSource({"3, 4.4154", "5, 2.3724", "10, 1.6452"})
  void upperBound(int n, double factor) {
    assertThat(new Repeatability(1, n - 1).upperBound(0.95)).isCloseTo(factor, within(5.1e-5));
  }

  @Test
  void pooling() {
    Repeatability pooled =
        Repeatability.pooled(List.of(Moments.of(1, 2, 3), Moments.of(10, 14), Moments.of(5)));
    assertThat(pooled.dof()).isEqualTo(3);
    assertThat(pooled.sd()).isCloseTo(Math.sqrt((2 + 8) / 3.0), within(1e-14));
    assertThat(Repeatability.pooled(List.of())).isEqualTo(Repeatability.UNKNOWN);
    Repeatability known = new Repeatability(0.5, Double.POSITIVE_INFINITY);
    assertThat(pooled.pool(known)).isEqualTo(known);
    assertThat(known.pool(pooled)).isEqualTo(known);
    assertThat(known.upperBound(0.95)).isEqualTo(0.5);
    assertThat(Repeatability.UNKNOWN.upperBound(0.95)).isInfinite();
    assertThat(pooled.atLeast(7).sd()).isEqualTo(7);
    assertThat(pooled.atLeast(0.1)).isEqualTo(pooled);
  }

  @Test
  void refusesNegativeScatter() {
    assertThatThrownBy(() -> new Repeatability(-1, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Repeatability(1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Repeatability(1, 1).criticalRange(1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Cochran 5 % (ISO 5725-2 tabulates the same; digits computed independently). */
  @ParameterizedTest
  @CsvSource({
    "2, 5, 0.9057",
    "2, 10, 0.8010",
    "3, 5, 0.7457",
    "4, 5, 0.6287",
    "5, 3, 0.6838",
    "5, 5, 0.5440",
    "10, 5, 0.3311"
  })
  void cochran(int series, int repeats, double critical) {
    assertThat(Cochran.critical(series, repeats, 0.05)).isCloseTo(critical, within(5.1e-5));
  }

  @Test
  void cochranStatistic() {
    assertThat(Cochran.statistic(3, 4, 12)).isCloseTo(144.0 / 169, within(1e-15));
    assertThat(Cochran.statistic(0, 0)).isZero();
  }
}
