package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * ISO 230-2 on the full table of a public motion acceptance report of 2021 (millimetres, five
 * repeats each way). Where its published axis figures contradict the standard, both stand here.
 */
class TwoDirectionsTest {
  private static final double[] TARGETS = {15.0, 25.2, 35.4, 45.6, 55.8};
  private static final double[][] UP = {
    {15.00335, 15.00233, 15.00172, 15.00213, 15.00172},
    {25.19974, 25.20015, 25.20096, 25.20056, 25.20056},
    {35.40102, 35.3996, 35.40225, 35.40306, 35.40449},
    {45.59151, 45.5909, 45.59212, 45.5909, 45.58947},
    {55.80583, 55.80624, 55.80685, 55.80562, 55.80562}
  };
  private static final double[][] DOWN = {
    {15.00518, 15.00518, 15.00416, 15.00335, 15.00314},
    {25.19628, 25.19607, 25.19567, 25.19587, 25.19526},
    {35.39817, 35.39837, 35.3998, 35.39939, 35.4},
    {45.59232, 45.59191, 45.59293, 45.59191, 45.59151},
    {55.80705, 55.80725, 55.80705, 55.80705, 55.80644}
  };

  private static TwoDirections position(int i) {
    return new TwoDirections(
        Moments.of(Arrays.stream(UP[i]).map(x -> x - TARGETS[i]).toArray()),
        Moments.of(Arrays.stream(DOWN[i]).map(x -> x - TARGETS[i]).toArray()));
  }

  /** Published and recomputed B, s up, s down, R by position. */
  @ParameterizedTest
  @CsvSource({
    "0, -0.00196, -0.001952, 0.000669440, 0.000970629, 0.005232137, 0.00524",
    "1, 0.00456, 0.004564, 0.000464414, 0.000391216, 0.006275259, 0.00628",
    "2, 0.00293, 0.002938, 0.001875588, 0.000832364, 0.008353904, 0.00835",
    "3, -0.00114, -0.001136, 0.000984048, 0.000537662, 0.004179419, 0.00419",
    "4, -0.00094, -0.000936, 0.000522657, 0.000307604, 0.002596521, 0.00259"
  })
  void positions(
      int i, double publishedB, double b, double sUp, double sDown, double r, double publishedR) {
    TwoDirections position = position(i);
    assertThat(position.reversal()).isCloseTo(publishedB, within(1.1e-5));
    assertThat(position.reversal()).isCloseTo(b, within(1e-9));
    assertThat(position.up().sd()).isCloseTo(sUp, within(1e-9));
    assertThat(position.down().sd()).isCloseTo(sDown, within(1e-9));
    assertThat(position.repeatability()).isCloseTo(r, within(1e-9));
    assertThat(position.repeatability()).isCloseTo(publishedR, within(1.1e-5));
    assertThat(position.repeatabilityUp()).isCloseTo(4 * sUp, within(4e-9));
    assertThat(position.repeatabilityDown()).isCloseTo(4 * sDown, within(4e-9));
  }

  @Test
  void axis() {
    Axis axis = Axis.of(IntStream.range(0, 5).mapToObj(TwoDirectionsTest::position).toList());
    assertThat(axis.reversal()).isCloseTo(0.004564, within(1e-9));
    assertThat(axis.meanReversal()).isCloseTo(0.00069566, within(1e-6)); // published 0.00069
    assertThat(axis.systematicUp()).isCloseTo(0.015052, within(5e-7));
    assertThat(axis.systematicDown()).isCloseTo(0.014852, within(5e-7));
    assertThat(axis.meanDeviation()).isCloseTo(0.014952, within(5e-7));
    assertThat(axis.accuracyUp()).isCloseTo(0.018065, within(5e-7)); // published 0.01806
    assertThat(axis.accuracyDown()).isCloseTo(0.016543, within(5e-7)); // published 0.01655
    assertThat(axis.accuracy()).isCloseTo(0.018571, within(5e-7)); // published 0.01858
    // Published R = 0.0075 took only the unidirectional maxima; published E = 0.01485 only one way.
    assertThat(axis.repeatability()).isCloseTo(0.008354, within(5e-7));
    assertThat(Math.abs(axis.repeatability() - 0.0075)).isGreaterThan(8e-4);
    assertThat(axis.systematic()).isCloseTo(0.015988, within(5e-7));
    assertThat(Math.abs(axis.systematic() - 0.01485)).isGreaterThan(1e-3);
  }

  /**
   * Low limit contact in an open acceptance-test log of a research facility's motion system: five
   * crossings each way, midpoints of the sample intervals in encoder counts.
   */
  @Test
  void differentialOfARealContact() {
    Moments engage =
        midpoints(
            new double[] {786476, 786495, 786488, 786491, 786491},
            new double[] {786488, 786507, 786500, 786500, 786503});
    Moments disengage =
        midpoints(
            new double[] {785859, 785867, 785876, 785872, 785876},
            new double[] {785847, 785855, 785863, 785859, 785863});
    TwoDirections contact = new TwoDirections(engage, disengage);
    assertThat(engage.mean()).isCloseTo(786493.9, within(0.05));
    assertThat(engage.sd()).isCloseTo(7.145, within(5e-4));
    assertThat(engage.range()).isEqualTo(19.0);
    assertThat(disengage.sd()).isCloseTo(6.934, within(5e-4));
    assertThat(contact.reversal()).isCloseTo(630.2, within(0.05));
    assertThat(contact.uReversal()).isCloseTo(4.453, within(5e-4));
    assertThat(contact.degreesOfFreedom()).isCloseTo(7.99, within(0.005));
    assertThat(contact.middle()).isCloseTo(0.5 * (engage.mean() + disengage.mean()), within(1e-9));
  }

  private static Moments midpoints(double[] before, double[] at) {
    double[] middle = new double[before.length];
    Arrays.setAll(middle, i -> 0.5 * (before[i] + at[i]));
    return Moments.of(middle);
  }

  /** The same report: ten repeats of one contact, whose published deviation divides by n. */
  @Test
  void populationDeviationsAreNotOurs() {
    Moments low =
        Moments.of(
            -0.39861, -0.37186, -0.39201, -0.36995, -0.35549, -0.34295, -0.33603, -0.33299,
            -0.32678, -0.31750);
    assertThat(low.mean()).isCloseTo(-0.354417, within(5e-7));
    assertThat(low.range()).isCloseTo(0.08111, within(5e-6));
    assertThat(low.sd()).isCloseTo(0.027825, within(5e-7));
    assertThat(low.sd() * Math.sqrt(0.9)).isCloseTo(0.02640, within(5e-6));
  }

  @Test
  void refusesTooFew() {
    Moments two = Moments.of(1, 2);
    assertThatThrownBy(() -> new TwoDirections(two, Moments.of(1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Axis.of(List.of())).isInstanceOf(IllegalArgumentException.class);
  }
}
