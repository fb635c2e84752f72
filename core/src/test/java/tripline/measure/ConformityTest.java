package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against the examples of JCGM 106:2012 (clause numbers and inputs from memory, digits computed).
 */
class ConformityTest {

  /** JCGM 106 Table 1 (from memory: 0.84, 1.28, 1.64, 2.33, 3.09), single limit. */
  @ParameterizedTest
  @CsvSource({
    "0.80, 0.841621",
    "0.90, 1.281552",
    "0.95, 1.644854",
    "0.99, 2.326348",
    "0.999, 3.090232"
  })
  void singleLimit(double probability, double z) {
    assertThat(Conformity.probability(-z, 1, Limits.atMost(0)))
        .isCloseTo(probability, within(1e-6));
    assertThat(Conformity.probability(z, 1, Limits.atLeast(0)))
        .isCloseTo(probability, within(1e-6));
  }

  /** JCGM 106 clause 7, breakdown voltage and oil viscosity (from memory: 0.92 and 0.66). */
  @Test
  void clauseSevenExamples() {
    assertThat(Conformity.probability(-5.47, 0.05, Limits.atMost(-5.40)))
        .isCloseTo(0.9192433, within(1e-7));
    assertThat(Conformity.probability(13.6, 1.8, new Limits(12.5, 16.3)))
        .isCloseTo(0.6626298, within(1e-7));
  }

  /** JCGM 106 8.3, speed limit 100 km/h, relative u 2 %, 99.9 % (from memory: act above 107). */
  @Test
  void speedLimit() {
    double v = 100 / (1 - 0.02 * 3.090232);
    assertThat(v).isCloseTo(106.58761, within(1e-5));
    assertThat(Conformity.probability(v, 0.02 * v, Limits.atLeast(100)))
        .isCloseTo(0.999, within(1e-6));
  }

  /** ISO 14253-1:2017 (from memory): g = 1.65 u one-sided, 4.95 % at the limit. */
  @Test
  void tailsOfGuardBands() {
    assertThat(1 - Conformity.probability(-1.65, 1, Limits.atMost(0)))
        .isCloseTo(0.0494715, within(1e-7));
    // ILAC-G8:09/2019 clause 5.2 Table 1 (from memory), w = 3U, 1.5U, U, 0.83U, 0 with k = 2.
    assertThat(Conformity.probability(6, 1, Limits.atMost(0))).isCloseTo(9.8659e-10, within(1e-13));
    assertThat(Conformity.probability(3, 1, Limits.atMost(0))).isCloseTo(0.00134990, within(1e-8));
    assertThat(Conformity.probability(2, 1, Limits.atMost(0))).isCloseTo(0.02275013, within(1e-8));
    assertThat(Conformity.probability(1.66, 1, Limits.atMost(0)))
        .isCloseTo(0.04845723, within(1e-8));
    assertThat(Conformity.probability(0, 1, Limits.atMost(0))).isEqualTo(0.5);
  }

  /** ILAC-G8 rule w = U (k = 2), limit 10.00, u = 0.10: the limit of the zone belongs to it. */
  @ParameterizedTest
  @CsvSource({
    "9.79, ACCEPT",
    "9.80, ACCEPT",
    "9.81, UNDECIDED",
    "10.19, UNDECIDED",
    "10.21, REJECT"
  })
  void guardBandOfTwoStandardUncertainties(double y, Decision expected) {
    assertThat(Conformity.decide(y, 0.10, Limits.atMost(10.00), 2)).isEqualTo(expected);
    assertThat(Conformity.decide(-y, 0.10, Limits.atLeast(-10.00), 2)).isEqualTo(expected);
  }

  @Test
  void probabilityAtTheAcceptanceLimit() {
    assertThat(Conformity.probability(9.80, 0.1, Limits.atMost(10)))
        .isCloseTo(0.97724987, within(1e-8));
  }

  /** Specific risk, draft NCSL RP-19 as restated in an open uncertainty tool's tests. */
  @ParameterizedTest
  @CsvSource({"10, 0.01242", "10.5, 0.10574", "12, 0.99379"})
  void specificRisk(double y, double risk) {
    assertThat(1 - Conformity.probability(y, 0.4, new Limits(9, 11))).isCloseTo(risk, within(5e-6));
  }

  /** JCGM 106 9.5.3, resistors (inputs from memory, digits computed): both global risks. */
  @ParameterizedTest
  @CsvSource({
    "0, 0.01894221, 0.03720780",
    "0.02, 0.00987829, 0.06902651",
    "0.04, 0.00433407, 0.11465658",
    "0.08, 0.00046863, 0.24766964",
    "-0.02, 0.03114455, 0.01755417"
  })
  void resistors(double guard, double consumer, double producer) {
    ContinuousDistribution prior = NormalDistribution.of(1500, 0.12);
    Limits tolerance = new Limits(1499.8, 1500.2);
    Limits zone = new Limits(1499.8 + guard, 1500.2 - guard);
    DoubleUnaryOperator accepted = x -> prior.density(x) * Conformity.probability(x, 0.04, zone);
    DoubleUnaryOperator refused = x -> prior.density(x) - accepted.applyAsDouble(x);
    double passedBad = integral(accepted, 1499, 1499.8) + integral(accepted, 1500.2, 1501);
    assertThat(passedBad).isCloseTo(consumer, within(1e-8));
    assertThat(integral(refused, tolerance.lower(), tolerance.upper()))
        .isCloseTo(producer, within(1e-8));
  }

  /** JCGM 106 9.5.4, bearings: gamma prior, single limit; restated in an open tool's notebook. */
  @Test
  void bearings() {
    ContinuousDistribution prior = GammaDistribution.of(4, 0.25);
    DoubleUnaryOperator simple =
        x -> prior.density(x) * Conformity.probability(x, 0.25, Limits.atMost(2));
    DoubleUnaryOperator guarded =
        x -> prior.density(x) * Conformity.probability(x, 0.25, Limits.atMost(1.6718288));
    assertThat(integral(simple, 2, 12)).isCloseTo(0.00801911, within(1e-8));
    assertThat(prior.cumulativeProbability(2) - integral(simple, 0, 2))
        .isCloseTo(0.01744457, within(1e-8));
    assertThat(integral(guarded, 2, 12)).isCloseTo(0.001, within(1e-8));
    assertThat(prior.cumulativeProbability(2) - integral(guarded, 0, 2))
        .isCloseTo(0.0754939, within(1e-7));
  }

  /** Draft NCSL RP-19: false accepts in per cent by in-tolerance share, test sigma a quarter. */
  @ParameterizedTest
  @CsvSource({
    "0.60, 4.83860326",
    "0.70, 3.92234109",
    "0.80, 2.85583037",
    "0.90, 1.59995312",
    "0.95, 0.87100925",
    "0.99, 0.19991684"
  })
  void falseAccepts(double inTolerance, double perCent) {
    double sigma =
        1 / NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + inTolerance / 2);
    ContinuousDistribution prior = NormalDistribution.of(0, sigma);
    DoubleUnaryOperator accepted =
        x -> prior.density(x) * Conformity.probability(x, sigma / 4, new Limits(-1, 1));
    assertThat(200 * integral(accepted, 1, 1 + 8 * sigma)).isCloseTo(perCent, within(1e-6));
  }

  @Test
  void whereGuardBandsMeetNothingIsAccepted() {
    Limits narrow = Limits.around(5, 0.1);
    assertThat(Conformity.decide(5, 0.1, narrow, 1.645)).isEqualTo(Decision.UNDECIDED);
    assertThat(Conformity.decide(5.3, 0.1, narrow, 1.645)).isEqualTo(Decision.REJECT);
  }

  @Test
  void withoutUncertaintyLimitsBelong() {
    Limits limits = new Limits(1, 2);
    assertThat(Conformity.decide(Estimate.exact(2), limits)).isEqualTo(Decision.ACCEPT);
    assertThat(Conformity.probability(Estimate.exact(2), limits)).isEqualTo(1);
    assertThat(Conformity.decide(Estimate.exact(2.0001), limits)).isEqualTo(Decision.REJECT);
    assertThat(Conformity.probability(Estimate.exact(2.0001), limits)).isZero();
  }

  @Test
  void decisionAgreesWithProbabilityAndFallsMonotonically() {
    Limits limits = Limits.around(0.5, 0.1);
    double before = 1;
    for (double y = 0.5; y < 0.8; y += 0.001) {
      double p = Conformity.probability(y, 0.02, limits);
      assertThat(p).isLessThanOrEqualTo(before);
      Decision decision = Conformity.decide(Estimate.of(y, 0.02), limits);
      // 1.645 is a hair above the exact 95 % quantile.
      assertThat(decision == Decision.ACCEPT).isEqualTo(p >= 0.950015 - 1e-6);
      assertThat(decision == Decision.REJECT).isEqualTo(p < 0.049985 - 1e-6);
      before = p;
    }
  }

  @Test
  void decisionsOfAWhole() {
    assertThat(Decision.ACCEPT.and(Decision.UNDECIDED)).isEqualTo(Decision.UNDECIDED);
    assertThat(Decision.UNDECIDED.and(Decision.REJECT)).isEqualTo(Decision.REJECT);
    assertThat(Decision.ACCEPT.and(Decision.ACCEPT)).isEqualTo(Decision.ACCEPT);
  }

  @Test
  void nonsenseIsRefused() {
    Limits limits = new Limits(1, 2);
    assertThatThrownBy(() -> Conformity.probability(Double.NaN, 1, limits))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Conformity.probability(1, Double.NaN, limits))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Conformity.decide(1, -1, limits, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Limits(2, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Limits(Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new DecisionRule(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Simpson's rule, 2000 intervals. */
  private static double integral(DoubleUnaryOperator f, double from, double to) {
    int n = 2000;
    double h = (to - from) / n;
    double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
    for (int i = 1; i < n; i++) {
      sum += (i % 2 == 0 ? 2 : 4) * f.applyAsDouble(from + i * h);
    }
    return sum * h / 3;
  }
}
