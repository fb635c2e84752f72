package tripline.accept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.job.Direction;
import tripline.measure.Grubbs;
import tripline.measure.Moments;
import tripline.measure.Repeatability;
import tripline.measure.StrdSets;
import tripline.measure.TwoDirections;

/**
 * Published values fed in as deviations of a trip point, stroke by stroke, and read off what an
 * acceptance makes of them.
 */
class PublishedValuesTest {
  /** Deviations ride on a position of half a turn: what a double loses there. */
  private static final double ROUNDING = 1e-12;

  /** NIST/SEMATECH e-Handbook 1.3.5.17: G = 2.4687646, one-sided critical value at 5 % 2.032. */
  @Test
  void handbookOutlier() {
    double[] masses = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    Repeats repeats = Repeats.of(Repeats.scaled(masses, 200, 1e-3));
    SeriesScatter scatter = repeats.limit(Direction.CLOSING);
    Grubbs grubbs = scatter.grubbs().orElseThrow();
    assertThat(grubbs.g()).isCloseTo(2.46876461121245, within(1e-9));
    assertThat(grubbs.index()).isEqualTo(7);
    assertThat(scatter.outlier()).isEqualTo(OutlierGrade.OUTLIER);
    assertThat(scatter.moments().n()).as("never dropped").isEqualTo(8);
    assertThat(scatter.moments().sd()).isCloseTo(15.852564405e-3, within(1e-11));
    assertThat(repeats.trip("close").interval().orElseThrow().n()).isEqualTo(8);
  }

  /** A public motion acceptance report of 2021: nine repeats and one that jumped. */
  @Test
  void realContactThatJumpedOnce() {
    double[] low = {
      -0.01605, -0.01664, -0.01916, -0.02128, -0.02128, -0.02439, -0.02381, -0.02496, -0.02437,
      -0.29179
    };
    SeriesScatter scatter = Repeats.of(low).limit(Direction.CLOSING);
    assertThat(scatter.grubbs().orElseThrow().g()).isCloseTo(2.84405, within(5e-6));
    assertThat(scatter.outlier()).isEqualTo(OutlierGrade.OUTLIER);
  }

  /**
   * ISO 16269-6 factors, unknown mean and deviation, two-sided, from an open transcription of its
   * tables, which round up at the fourth decimal; share/confidence in per cent.
   */
  @ParameterizedTest
  @CsvSource({
    "3, 90, 95, 8.3060", "3, 95, 95, 9.7888", "3, 99, 95, 12.6472", "3, 95, 99, 22.1308",
    "4, 95, 95, 6.3411", "5, 95, 95, 5.0769", "6, 90, 95, 3.7326", "6, 95, 99, 6.3735",
    "8, 95, 95, 3.7456", "10, 95, 95, 3.3935", "10, 99, 95, 4.4370", "12, 95, 95, 3.1747",
    "20, 95, 95, 2.7604"
  })
  void toleranceFactors(int n, double share, double confidence, double table) {
    double[] deviations = new double[n];
    for (int i = 0; i < n; i++) {
      deviations[i] = 1e-3 * (i % 3 - 1);
    }
    TripAcceptance trip =
        Repeats.asking(2, confidence / 100, share / 100).close(deviations).trip("close");
    double factor = trip.halfWidth().getAsDouble() / Moments.of(deviations).sd();
    assertThat(factor).isBetween(table - 1.0e-4 - 1e-9, table + 1e-9);
  }

  /** ISO 5725-6: r = 1.96 sqrt 2 s_r = 2.7718 s_r; pooled by ISO 5725-2 7.4.2. */
  @Test
  void repeatabilityLimit() {
    SettingAcceptance accepted =
        Repeats.asking(2, 0.95, 0.95)
            .close(new double[] {0.001, 0.002, 0.003}, new double[] {0.010, 0.014, 0.018})
            .accept();
    // The closed end's two series scatter; the eight of the other cams repeat.
    double squares = 2 * 0.001 * 0.001 + 2 * 0.004 * 0.004;
    assertThat(accepted.repeatability().dof()).isEqualTo(20);
    assertThat(accepted.repeatability().sd()).isCloseTo(Math.sqrt(squares / 20), within(ROUNDING));
    Repeatability closing =
        Repeats.of(0.001, 0.002, 0.003).limit(Direction.CLOSING).repeatability();
    assertThat(closing.limit()).isCloseTo(2.771808e-3, within(5e-10));
  }

  /** ISO 5725-2 7.3.3: one of ten series scatters alone. Cochran's statistic is then 1. */
  @Test
  void oneCamThatScattersMoreThanItsFellows() {
    Unequal unequal = Repeats.of(0.001, 0.002, 0.003).accept().unequal().orElseThrow();
    assertThat(unequal.statistic()).isCloseTo(1, within(1e-6));
    assertThat(unequal.series()).isEqualTo(10);
    assertThat(unequal.stands()).isTrue();
    assertThat(unequal.worst().contact().contact().name()).isEqualTo("21-22");
  }

  /** ISO 230-2 on position 3 of a public motion acceptance report of 2021 (millimetres). */
  @Test
  void bothDirections() {
    double[] up = {35.40102, 35.3996, 35.40225, 35.40306, 35.40449};
    double[] down = {35.39817, 35.39837, 35.3998, 35.39939, 35.4};
    TwoDirections both =
        Repeats.asking(2, 0.95, 0.95)
            .close(Repeats.scaled(down, 35.4, 1), Repeats.scaled(up, 35.4, 1))
            .trip("close")
            .both()
            .orElseThrow();
    // The cam's own differential of 0.02 turn is part of the reversal here.
    assertThat(both.reversal() - 0.02).isCloseTo(0.002938, within(5e-7));
    assertThat(both.up().sd()).isCloseTo(0.001875588, within(5e-10));
    assertThat(both.down().sd()).isCloseTo(0.000832364, within(5e-10));
    assertThat(both.repeatability() - 0.02).isCloseTo(0.008353904, within(5e-9));
  }

  /**
   * NIST StRD univariate sets, a stroke a value, brought to the size of deviations. The others have
   * more values than anybody makes strokes: {@code MomentsTest} feeds all of them to the class that
   * is used here.
   */
  @ParameterizedTest
  @EnumSource(names = {"MAVRO", "MICHELSO"})
  void certifiedSets(StrdSets set) {
    double scale = 0.01 / set.sd();
    double[] deviations = Repeats.scaled(set.data(), set.mean(), scale);
    Moments moments = Repeats.of(deviations).limit(Direction.CLOSING).moments();
    assertThat(moments.n()).isEqualTo(set.data().length);
    assertThat(moments.mean()).isCloseTo(0.5, within(ROUNDING));
    assertThat(moments.sd() / scale / set.sd()).isCloseTo(1, within(1e-11));
    assertThat(moments.lag1()).isCloseTo(set.lag1(), within(1e-11));
  }

  /** NIST StRD NumAcc1, as above: exactly 10000002, 1 and -0.5. */
  @Test
  void numericalAccuracyOne() {
    double[] values = {10000001, 10000003, 10000002};
    Moments moments =
        Repeats.of(Repeats.scaled(values, 10000002, 0.01)).limit(Direction.CLOSING).moments();
    assertThat(moments.mean()).isCloseTo(0.5, within(ROUNDING));
    assertThat(moments.sd() / 0.01).isCloseTo(1, within(1e-12));
    assertThat(moments.lag1()).isCloseTo(-0.5, within(1e-12));
  }
}
