package tripline.accept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.assess.Assessment;
import tripline.job.Direction;
import tripline.measure.Decision;
import tripline.measure.ToleranceFactor;

/** What is said of strokes whose scatter is known; tolerance 0.1 turn about the target. */
class SettingAcceptanceTest {
  private static final double[] THREE = {-0.005, 0, 0.005};

  private static double[] spread(double size) {
    return new double[] {0, -size, size};
  }

  @Test
  void acceptsWhatRepeatsWithinItsTolerance() {
    SettingAcceptance accepted = Repeats.asking(3, 0.95, 0.95).close(THREE).accept();
    assertThat(accepted.decision()).isEqualTo(Decision.ACCEPT);
    assertThat(accepted.opening()).isEqualTo(3);
    assertThat(accepted.closing()).isEqualTo(3);
    assertThat(accepted.trips()).allMatch(t -> t.reason() == Reason.NONE);
  }

  /** k = 9.7888 for three strokes at 95/95 (ISO 16269-6): s up to 0.0102 turn fits 0.1 turn. */
  @ParameterizedTest
  @CsvSource({"0.0102, ACCEPT, NONE", "0.0103, UNDECIDED, SCATTER"})
  void threeStrokesSupportAsMuchScatterAsTheirFactorSays(
      double sd, Decision decision, Reason reason) {
    TripAcceptance trip = Repeats.asking(3, 0.95, 0.95).close(spread(sd)).trip("close");
    assertThat(trip.decision()).isEqualTo(decision);
    assertThat(trip.reason()).isEqualTo(reason);
  }

  /** s = 0.03: k must fall to 3.333, which ISO 16269-6 has between 10 (3.3935) and 12 (3.1747). */
  @Test
  void saysHowManyStrokesWouldSettleIt() {
    TripAcceptance trip = Repeats.asking(3, 0.95, 0.95).close(spread(0.03)).trip("close");
    assertThat(trip.strokesNeeded()).hasValue(11);
    assertThat(trip.moreStrokes()).hasValue(8);
    // 0.1 / 0.03 = 3.333: a share whose factor for three strokes is that.
    double share = trip.supportedShare().orElseThrow();
    assertThat(ToleranceFactor.twoSided(3, share, 0.95)).isCloseTo(0.1 / 0.03, within(1e-6));
    assertThat(share).isBetween(0.4, 0.95);
  }

  @Test
  void tooFewStrokesAreUndecidedWithTheNumberThatIsMissing() {
    SettingAcceptance accepted = Repeats.asking(5, 0.95, 0.95).close(THREE).accept();
    assertThat(accepted.decision()).isEqualTo(Decision.UNDECIDED);
    assertThat(accepted.missing(Direction.OPENING)).isEqualTo(2);
    assertThat(accepted.trips())
        .allMatch(t -> t.reason() == Reason.FEW_STROKES && t.moreStrokes().getAsInt() == 2);
    assertThat(accepted.trips().get(0).supportedShare()).isPresent();
  }

  /** With two strokes k = 37.67: three would not do, and it says so at once. */
  @Test
  void fewStrokesThatScatterNeedMoreThanTheSheetAsks() {
    TripAcceptance trip = Repeats.asking(3, 0.95, 0.95).close(-0.02, 0.02).trip("close");
    assertThat(trip.reason()).isEqualTo(Reason.FEW_STROKES);
    assertThat(trip.strokesNeeded().getAsInt()).isGreaterThan(3);
  }

  @Test
  void oneStrokeAndNoneAreNoErrors() {
    TripAcceptance one = Repeats.asking(3, 0.95, 0.95).close(0).trip("close");
    assertThat(one.reason()).isEqualTo(Reason.FEW_STROKES);
    assertThat(one.moreStrokes()).hasValue(2);
    assertThat(one.interval()).isEmpty();
    TripAcceptance none = Repeats.asking(3, 0.95, 0.95).then(3, 0).then(0, 3).trip("close");
    assertThat(none.reason()).isEqualTo(Reason.NOT_SEEN);
    assertThat(none.moreStrokes()).hasValue(3);
    assertThat(none.series().orElseThrow().aside()).isNotEmpty();
  }

  @Test
  void partialApproachesAreKeptAsideAndNotCounted() {
    Repeats repeats = Repeats.asking(3, 0.95, 0.95).close(-0.005, 0.005);
    for (int i = 0; i < 5; i++) {
      repeats.then(0, 3).then(3, 0);
    }
    TripAcceptance trip = repeats.trip("close");
    assertThat(trip.series().orElseThrow().n()).isEqualTo(2);
    assertThat(trip.series().orElseThrow().aside()).hasSize(5);
    assertThat(trip.moreStrokes().getAsInt()).isPositive();
  }

  /**
   * The stop is one error for all strokes: it widens the interval by its 95 % half-width, 1.96 u,
   * whatever the number of strokes, and does not show in the scatter.
   */
  @Test
  void whatAllStrokesHaveInCommonWidensTheIntervalOnce() {
    Repeats exact = Repeats.asking(3, 0.95, 0.95).close(THREE);
    double scatter = exact.trip("close").halfWidth().orElseThrow();
    TripAcceptance felt = exact.measured(0, 0.02).trip("close");
    assertThat(felt.interval().orElseThrow().halfWidth()).isCloseTo(scatter, within(1e-12));
    assertThat(felt.guard()).isCloseTo(1.959964 * 0.02, within(1e-7));
    assertThat(felt.halfWidth().orElseThrow()).isCloseTo(scatter + felt.guard(), within(1e-12));
    assertThat(felt.common().orElseThrow().parts()).hasSize(1);
    assertThat(felt.decision()).isEqualTo(Decision.ACCEPT);
    TripAcceptance coarse = exact.measured(0, 0.052).trip("close");
    assertThat(coarse.reason()).isEqualTo(Reason.COMMON);
    assertThat(coarse.strokesNeeded()).isEmpty();
  }

  /**
   * Own uncertainty is in the scatter already. Only what the scatter does not show of it, and so
   * may be common to the strokes, widens the interval.
   */
  @Test
  void scatterOfTheMeasurementCountsOnce() {
    Repeats repeats = Repeats.asking(3, 0.95, 0.95).close(THREE);
    double scatter = repeats.trip("close").halfWidth().orElseThrow();
    assertThat(repeats.measured(0.0049, 0).trip("close").halfWidth().orElseThrow())
        .isCloseTo(scatter, within(1e-12));
    double unseen = Math.sqrt(0.01 * 0.01 - 0.005 * 0.005);
    TripAcceptance loose = repeats.measured(0.010, 0).trip("close");
    assertThat(loose.halfWidth().orElseThrow())
        .isCloseTo(scatter + 1.959964 * unseen, within(1e-7));
    assertThat(loose.common().orElseThrow().budget()).containsOnlyKeys("measurement");
  }

  /** Three strokes that agree to the last digit are believed to the measurement's uncertainty. */
  @Test
  void agreementClaimsNoMoreThanCanBeMeasured() {
    TripAcceptance trip =
        Repeats.asking(3, 0.95, 0.95).close(0, 0, 0).measured(0.012, 0).trip("close");
    assertThat(trip.halfWidth().orElseThrow()).isCloseTo(1.959964 * 0.012, within(1e-7));
  }

  @Test
  void anOutlierIsNeverDroppedAndNothingIsRejectedOnIt() {
    double[] once = {0, 0.001, -0.001, 0.3, 0, 0.0005};
    SettingAcceptance accepted = Repeats.asking(3, 0.95, 0.95).close(once).accept();
    TripAcceptance trip = accepted.trips().get(0);
    assertThat(trip.scatter().orElseThrow().outlier()).isEqualTo(OutlierGrade.OUTLIER);
    assertThat(trip.series().orElseThrow().n()).isEqualTo(6);
    assertThat(trip.reason()).isEqualTo(Reason.OUTLIER);
    assertThat(trip.decision()).isEqualTo(Decision.UNDECIDED);
    assertThat(trip.strokesNeeded()).isEmpty();
    double[] last = {0, 0.001, -0.001, 0.0005, 0, 0.04};
    assertThat(Repeats.asking(3, 0.95, 0.95).close(last).trip("close").reason())
        .as("one step or one outlier at the end: either way nothing is accepted on it")
        .isEqualTo(Reason.OUTLIER);
    double[] small = {0, 0.001, -0.001, 0.0005, 0, 0.02};
    TripAcceptance within = Repeats.asking(3, 0.95, 0.95).close(small).trip("close");
    assertThat(within.scatter().orElseThrow().outlier()).isEqualTo(OutlierGrade.OUTLIER);
    assertThat(within.decision()).isEqualTo(Decision.ACCEPT);
  }

  @Test
  void whatMovesIsNoSeriesOfRepeats() {
    double[] creeps = {-0.03, -0.021, -0.01, 0, 0.011, 0.02, 0.03};
    TripAcceptance drift = Repeats.asking(3, 0.95, 0.95).close(creeps).trip("close");
    assertThat(drift.reason()).isEqualTo(Reason.UNSTEADY);
    assertThat(drift.scatter().orElseThrow().moved(0.01)).isCloseTo(0.0602, within(0.001));
    double[] jumps = {0, 0.001, 0, 0.04, 0.041, 0.04, 0.041};
    TripAcceptance step = Repeats.asking(3, 0.95, 0.95).close(jumps).trip("close");
    assertThat(step.reason()).isEqualTo(Reason.UNSTEADY);
    assertThat(step.scatter().orElseThrow().step().orElseThrow().after()).isEqualTo(3);
    double[] little = {-0.003, -0.002, -0.001, 0, 0.001, 0.002, 0.003};
    assertThat(Repeats.asking(3, 0.95, 0.95).close(little).trip("close").decision())
        .isEqualTo(Decision.ACCEPT);
  }

  @Test
  void whatStandsOutIsNamed() {
    double[] once = {0, 0.001, -0.001, 0.3, 0, 0.0005};
    assertThat(Repeats.asking(3, 0.95, 0.95).close(once).accept().standOuts())
        .hasSize(3)
        .allMatch(s -> s.kind() == StandOut.Kind.OUTLIER)
        .allMatch(s -> Math.abs(s.turns() - 0.29990) < 1e-4)
        .extracting(s -> s.series().contact().contact().name())
        .containsExactly("23-24", "21-22", "33-34");
    double[] creeps = {-0.03, -0.021, -0.01, 0, 0.011, 0.02, 0.03};
    assertThat(Repeats.asking(3, 0.95, 0.95).close(creeps).accept().standOuts())
        .allMatch(s -> s.kind() == StandOut.Kind.DRIFT && s.chance() < 1e-4)
        .hasSize(3);
    double[] jumps = {0, 0.001, 0, 0.04, 0.041, 0.04, 0.041};
    assertThat(Repeats.asking(3, 0.95, 0.95).close(jumps).accept().standOuts())
        .allMatch(s -> s.kind() == StandOut.Kind.STEP && Math.abs(s.turns() - 0.0402) < 1e-3)
        .hasSize(3);
  }

  /** Scatter alone makes nothing stand out but once in a while. */
  @Test
  void scatterAloneIsNotTold() {
    Random random = new Random(4);
    int told = 0;
    for (int i = 0; i < 60; i++) {
      double[] closing = random.doubles(6).map(u -> 0.004 * random.nextGaussian()).toArray();
      double[] opening = random.doubles(6).map(u -> 0.004 * random.nextGaussian()).toArray();
      boolean any =
          !Repeats.asking(3, 0.95, 0.95).close(closing, opening).accept().standOuts().isEmpty();
      told += any ? 1 : 0;
    }
    assertThat(told).isLessThanOrEqualTo(2);
  }

  @Test
  void rejectsWhatIsOutsideForCertain() {
    double[] outside = {0.15, 0.151, 0.149, 0.15};
    SettingAcceptance accepted = Repeats.asking(3, 0.95, 0.95).close(outside).accept();
    assertThat(accepted.trips().get(0).reason()).isEqualTo(Reason.OUTSIDE);
    assertThat(accepted.decision()).isEqualTo(Decision.REJECT);
  }

  @Test
  void withoutAStopNothingIsDecided() {
    Repeats repeats = Repeats.asking(3, 0.95, 0.95).close(THREE);
    repeats.bench.closedStop = Optional.empty();
    repeats.bench.openStop = Optional.empty();
    SettingAcceptance accepted = SettingAcceptance.of(Assessment.of(repeats.bench.build()));
    assertThat(accepted.trips()).allMatch(t -> t.reason() == Reason.NO_TARGET);
    assertThat(accepted.decision()).isEqualTo(Decision.UNDECIDED);
    assertThat(repeats.limit(Direction.CLOSING).moments().sd()).isCloseTo(0.005, within(1e-12));
  }

  /** A cam of spares alone is reported and does not count. */
  @Test
  void sparesDoNotCount() {
    SettingAcceptance accepted = Repeats.asking(3, 0.95, 0.95).close(THREE).accept();
    assertThat(accepted.trips())
        .filteredOn(t -> !t.required())
        .extracting(t -> t.target().cam())
        .containsOnly("band");
  }
}
