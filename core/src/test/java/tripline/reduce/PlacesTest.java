package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tripline.reduce.Feed.MS;
import static tripline.reduce.Feed.NONE;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.truth.Rng;

/** Positions at changes: exact where they can be, honest where they cannot. */
class PlacesTest {
  /** Position at the only change of dense rows every ms, contact closing at 2000.5 ms. */
  private static Place placeOf(Feed feed, DoubleUnaryOperator reading) {
    return only(feed.pathClosingAt(2000.5, 0, 4000, 1, reading));
  }

  private static Place only(Feed feed) {
    assertThat(feed.changes()).hasSize(1);
    return feed.changes().get(0).place();
  }

  @Test
  void aLineIsMetExactly() {
    Place place = placeOf(Feed.of(1, 0.001), t -> 3 + 0.7 * t);
    assertThat(place.reading()).isCloseTo(3 + 0.7 * 2.0005, within(1e-9));
    assertThat(place.speed()).isCloseTo(0.7, within(1e-6));
  }

  @Test
  void aParabolaIsMetToAFractionOfACount() {
    Place place = placeOf(Feed.of(1, 0.001), t -> 0.3 * t + 0.05 * t * t);
    assertThat(place.reading()).isCloseTo(0.3 * 2.0005 + 0.05 * 2.0005 * 2.0005, within(5e-5));
    assertThat(place.speed()).isCloseTo(0.3 + 0.1 * 2.0005, within(2e-3));
  }

  /**
   * Straight motion, white noise: the variance at the centre of N even samples is s²/N, the
   * Cramér-Rao bound of a line at its centre (formula from memory; N = 11, 21 in the source: 1/11,
   * 1/21).
   */
  @Test
  void straightMotionAttainsTheCramerRaoBound() {
    double s = 0.003;
    double squares = 0;
    double stated = 0;
    int runs = 30;
    for (int seed = 0; seed < runs; seed++) {
      Rng rng = new Rng(100 + seed);
      Feed feed = Feed.of(1, 1e-5);
      for (int k = 0; k < 8; k++) {
        double closes = 1000 * k + 2000.5;
        int state = (k + 1) % 2;
        if (k == 0) {
          feed.path(0, closes, 1, t -> 0.5 * t + s * rng.gaussian(), 1, 0);
        }
        feed.path(
            Math.ceil(closes),
            Math.ceil(closes) + 1000,
            1,
            t -> 0.5 * t + s * rng.gaussian(),
            1,
            state);
      }
      for (Change c : feed.changes()) {
        double off = c.place().reading() - 0.5 * c.timeNs() * 1e-9;
        squares += off * off;
        stated += c.place().u() * c.place().u();
      }
    }
    double bound = s * s / 1000;
    int n = runs * 8;
    // The variance of n samples is known to sqrt(2/n): 9 %; three of those, and what the choice
    // among laws of motion costs.
    assertThat(squares / n).isBetween(bound * 0.73, bound * 1.4);
    assertThat(stated / n).isBetween(bound * 0.95, bound * 1.45);
  }

  /** 24 counts a turn: a count is 0.042 turn, the moments of its edges are worth far more. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.5, 1.0})
  void aCoarseEncoderBeatsAnEighthOfItsCount(double speed) {
    double q = 1 / 24.0;
    Place place = placeOf(Feed.of(1, q), t -> Feed.counts(speed * t, q));
    assertThat(place.reading()).isCloseTo(speed * 2.0005, within(q / 8));
    assertThat(place.u()).isLessThan(q / 8);
  }

  @Test
  void aWrappedReadingGoesOn() {
    Feed feed = new Feed(Feed.settings(1, 0.001, OptionalDouble.of(1.5), 1));
    Place place = placeOf(feed, t -> (0.8 * t) % 1.5);
    assertThat(place.reading()).isCloseTo(0.8 * 2.0005, within(1e-6));
  }

  @Test
  void aFallingWrappedReadingGoesOn() {
    Feed feed = new Feed(Feed.settings(1, 0.001, OptionalDouble.of(1.5), -1));
    Place place = placeOf(feed, t -> 1.49 - 0.8 * t - 1.5 * Math.floor((1.49 - 0.8 * t) / 1.5));
    assertThat(place.reading()).isCloseTo(1.49 - 0.8 * 2.0005, within(1e-6));
  }

  /** Raw counts of 31 bits: the fit is as good as at zero, stated or estimated count. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1})
  void largeCountsLoseNoDigits(double quantum) {
    ReductionSettings settings = Feed.settings(1, quantum, OptionalDouble.empty(), 1e-4);
    DoubleUnaryOperator counts = t -> Feed.counts(1234.5 * t, 1);
    Feed near = new Feed(settings).pathClosingAt(2000.5, 0, 4000, 1, counts);
    Feed far =
        new Feed(settings)
            .pathClosingAt(2000.5, 0, 4000, 1, t -> 2_000_000_000 + counts.applyAsDouble(t));
    assertThat(far.trace().quantum()).isEqualTo(1);
    assertThat(only(far).reading() - 2e9).isCloseTo(only(near).reading(), within(1e-5));
    assertThat(only(near).reading()).isCloseTo(1234.5 * 2.0005, within(0.2));
  }

  /**
   * Position stamped 30 ms late: the place is where the contact changed, on the position's clock.
   */
  @Test
  void skewIsAllowedFor() {
    ReductionSettings plain = Feed.settings(1, 0.001, OptionalDouble.empty(), 1);
    Feed feed =
        new Feed(
            new ReductionSettings(
                plain.channels(), plain.settleNs(), 30 * MS, 0.001, OptionalDouble.empty(), 1));
    Place place = placeOf(feed, t -> 0.7 * (t - 0.030));
    assertThat(place.reading()).isCloseTo(0.7 * 2.0005, within(1e-9));
  }

  /** Two contacts close together; the filter of the second takes 8 ms longer to its stamp. */
  @Test
  void delaysOfSingleContactsAreAllowedFor() {
    ReductionSettings plain = Feed.settings(2, 0.001, OptionalDouble.empty(), 1);
    Feed feed =
        new Feed(
            new ReductionSettings(
                plain.channels(),
                plain.settleNs(),
                0,
                0.001,
                OptionalDouble.empty(),
                1,
                List.of(0L, 8 * MS)));
    for (int k = 0; k < 4000; k++) {
      feed.row(k, 0.7 * k * 1e-3, 3, k >= 2009 ? 3 : k >= 2001 ? 1 : 0);
    }
    assertThat(feed.changes()).hasSize(2);
    for (Change change : feed.changes()) {
      assertThat(change.place().reading()).isCloseTo(0.7 * 2.0005, within(1e-9));
    }
  }

  /** Every third position missing at random, and 60 ms about the change altogether. */
  @Test
  void missingSamplesWidenTheUncertaintyHonestly() {
    Rng rng = new Rng(9);
    Feed feed = Feed.of(1, 1e-4);
    for (int k = 0; k < 4000; k++) {
      boolean missing = Math.abs(k - 2000) < 30 || rng.chance(0.33);
      double reading = 0.5 * k * 1e-3 + 0.001 * rng.gaussian();
      feed.row(k, missing ? NONE : reading, 1, k >= 2001 ? 1 : 0);
    }
    Place place = only(feed);
    assertThat(Math.abs(place.reading() - 0.5 * 2.0005)).isLessThan(3.5 * place.u());
    assertThat(place.u()).isBetween(0.001 / Math.sqrt(700), 0.001 / 4);
  }

  @Test
  void withoutPositionsNothingIsKnown() {
    Feed feed = Feed.of(1, 0.001).pathClosingAt(100, 0, 500, 1, t -> NONE);
    assertThat(only(feed).known()).isFalse();
    assertThat(feed.changes().get(0).motion()).isEqualTo(Change.Motion.UNKNOWN);
    assertThat(feed.trace().movements()).isEmpty();
  }

  /** The last samples of a recording: the window has one side only. */
  @Test
  void aChangeAtTheVeryEndIsPlaced() {
    Feed feed = Feed.of(1, 0.001).pathClosingAt(2000.5, 0, 2012, 1, t -> 0.7 * t);
    assertThat(only(feed).reading()).isCloseTo(0.7 * 2.0005, within(2e-3));
  }

  /** An encoder that writes only when it moves: at an even speed, and slowing down to a stop. */
  @ParameterizedTest
  @CsvSource({"0.01, 0.5", "0.0416667, 0.5", "0.0416667, 0.25"})
  void aSparseEncoderIsAsGoodAsItsEdges(double q, double speed) {
    Feed feed = Feed.of(1, q).row(0, 0, 1, 0);
    double written = 0;
    for (int k = 1; k < 800; k++) {
      double t = k * 0.005;
      double reading = Feed.counts(speed * t, q);
      boolean closes = k == 401;
      if (reading != written || closes) {
        feed.row(5 * k, reading != written ? reading : NONE, closes ? 1 : 0, closes ? 1 : 0);
      }
      written = reading;
    }
    Change c = feed.changes().get(0);
    assertThat(c.place().reading()).isCloseTo(speed * c.timeNs() * 1e-9, within(q / 3));
    assertThat(c.place().u()).isLessThan(q / 3);
    assertThat(c.motion()).isEqualTo(Change.Motion.MOVING);
  }

  /**
   * A position column sampled ten times a second beside dense contact rows is no encoder that
   * writes changes: between its readings it moved.
   */
  @ParameterizedTest
  @CsvSource({"0.0416667, 0.5", "0.0416667, 0.2", "0.01, 0.1"})
  void slowlySampledPositionsAreNotHeld(double q, double speed) {
    for (double closes : new double[] {2030.5, 2050.5, 2080.5}) {
      Feed feed = Feed.of(1, q);
      for (int k = 0; k < 4000; k++) {
        double at = Math.max(0, k * 1e-3 - 0.5);
        feed.row(k, k % 100 == 0 ? Feed.counts(speed * at, q) : NONE, 1, k >= closes ? 1 : 0);
      }
      Place place = only(feed);
      double truth = speed * (closes * 1e-3 - 0.5);
      assertThat(Math.abs(place.reading() - truth)).isLessThan(3 * place.u() + 1e-3);
    }
  }

  /**
   * A hand that pauses, or turns back after a pause, within 0.3 s of the change: the polynomial
   * cuts the corners, by less than the noise of one reading.
   */
  @Test
  void pausesAndReversalsCostLessThanTheNoiseOfAReading() {
    double noise = 0.001;
    double squares = 0;
    int runs = 60;
    for (int seed = 0; seed < runs; seed++) {
      Rng rng = new Rng(700 + seed);
      double stop = rng.uniform(1.7, 2.3);
      double back = rng.chance(0.5) ? 0.5 : 0;
      double[] x = new double[4000];
      double speed = 0.5;
      for (int k = 1; k < x.length; k++) {
        double t = k * 1e-3;
        double aim = t < stop ? 0.5 : t < stop + 0.5 ? 0 : -back;
        speed += (aim - speed) * 1e-3 / 0.12;
        x[k] = x[k - 1] + speed * 1e-3;
      }
      Place place =
          placeOf(
              Feed.of(1, 0.0005),
              t -> Feed.counts(x[(int) Math.round(t * 1e3)] + noise * rng.gaussian(), 0.0005));
      double off = place.reading() - (x[2000] + x[2001]) / 2;
      assertThat(Math.abs(off)).isLessThan(2 * noise);
      squares += off * off;
    }
    assertThat(Math.sqrt(squares / runs)).isLessThan(noise);
  }

  /** A reading that wraps without the sheet saying so, near a change on a coarse encoder. */
  @Test
  void anUndeclaredWrapIsSurvived() {
    ReductionSettings settings = Feed.settings(1, 1, OptionalDouble.empty(), 1 / 24.0);
    Feed feed = new Feed(settings);
    Place place =
        placeOf(feed, t -> Feed.counts(6 * t, 1) + (t > 3.2 ? -2147483648.0 : 2147483640.0));
    assertThat(place.reading() - 2147483640.0).isCloseTo(6 * 2.0005, within(1.0));
  }
}
