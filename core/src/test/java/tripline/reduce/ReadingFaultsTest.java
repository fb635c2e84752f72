package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tripline.reduce.Feed.MS;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.truth.Rng;

/** Readings that slip, and readings that freeze; and what looks like it and is not. */
class ReadingFaultsTest {
  private static List<ReadingFault> of(Trace trace, ReadingFault.Kind kind) {
    return trace.faults().stream().filter(f -> f.kind() == kind).toList();
  }

  /** Ten seconds of noisy counts from a path, dense rows with one contact. */
  private static Feed recorded(
      double rateHz, double quantum, double noise, DoubleUnaryOperator readingAtS) {
    return recorded(Feed.of(1, quantum), rateHz, quantum, noise, readingAtS);
  }

  private static Feed recorded(
      Feed feed, double rateHz, double quantum, double noise, DoubleUnaryOperator readingAtS) {
    Rng rng = new Rng(17);
    return feed.path(
        0,
        10_000,
        1000 / rateHz,
        t -> Feed.counts(readingAtS.applyAsDouble(t) + noise * rng.gaussian(), quantum),
        1,
        0);
  }

  /** By hand: about half a turn a second with ripple. */
  private static double hand(double t) {
    double turn = 2 * Math.PI * t;
    return 0.5 * t + 0.02 * Math.sin(turn) + 0.005 * Math.sin(2 * turn);
  }

  @ParameterizedTest
  @CsvSource({"1000,0.0005,0.001", "100,0.0005,0.003", "20,0.001,0", "1000,0.0416667,0"})
  void aJumpThatStaysIsASlip(double rateHz, double quantum, double noise) {
    for (double jump : new double[] {0.35, -0.5}) {
      Trace trace =
          recorded(rateHz, quantum, noise, t -> hand(t) + (t >= 4.0001 ? jump : 0)).trace();
      assertThat(of(trace, ReadingFault.Kind.SLIP))
          .singleElement()
          .satisfies(
              f -> {
                assertThat(f.amount()).isCloseTo(jump, within(0.06));
                assertThat(f.fromNs()).isBetween(3900 * MS, 4001 * MS);
                assertThat(f.toNs()).isBetween(4000 * MS, 4100 * MS);
              });
    }
  }

  @Test
  void aLeadThatLosesContactSlipsTwice() {
    Trace trace = recorded(1000, 0.001, 0.001, t -> t > 4 && t < 6 ? -3 : hand(t)).trace();
    assertThat(of(trace, ReadingFault.Kind.SLIP)).hasSize(2);
  }

  @Test
  void aStrayReadingIsNoSlip() {
    Trace trace = recorded(1000, 0.001, 0, t -> hand(t) + (Math.abs(t - 4) < 4e-4 ? 2 : 0)).trace();
    assertThat(trace.faults()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {10, 50, 1000})
  void motionIsNoSlip(double rateHz) {
    assertThat(recorded(rateHz, 0.0005, 0.01, ReadingFaultsTest::hand).trace().faults()).isEmpty();
    // A fast motor: at rest, at three turns a second within half a second, and back to rest.
    DoubleUnaryOperator motor =
        t -> t < 3 ? 0 : t < 3.5 ? 3 * (t - 3) * (t - 3) : t < 7 ? 0.75 + 3 * (t - 3.5) : 11.25;
    assertThat(recorded(rateHz, 0.0005, 0.001, motor).trace().faults()).isEmpty();
    // Four counts a turn.
    assertThat(recorded(rateHz, 0.25, 0.05, ReadingFaultsTest::hand).trace().faults()).isEmpty();
  }

  @Test
  void aWrapIsNoSlip() {
    Feed feed = new Feed(Feed.settings(1, 0.001, OptionalDouble.of(1), 1));
    DoubleUnaryOperator wrapped = t -> hand(t) - Math.floor(hand(t));
    Trace trace = recorded(feed, 200, 0.001, 0, wrapped).trace();
    assertThat(trace.faults()).isEmpty();
    assertThat(trace.movements().get(0)).isInstanceOf(Movement.Move.class);
  }

  @Test
  void aJumpOverMissingSamplesIsALossNotASlip() {
    Feed feed = Feed.of(1, 0.001).path(0, 4000, 1, ReadingFaultsTest::hand, 1, 0);
    Trace trace = feed.path(6000, 9000, 1, ReadingFaultsTest::hand, 1, 0).trace();
    assertThat(trace.faults()).isEmpty();
    assertThat(trace.losses()).hasSize(1);
  }

  @Test
  void slipsAreBounded() {
    Feed feed = recorded(1000, 0.001, 0, t -> Math.floor(t / 0.05) % 2);
    feed.path(10_000, 60_000, 1, t -> Math.floor(t) % 2, 1, 0);
    assertThat(of(feed.trace(), ReadingFault.Kind.SLIP).size()).isBetween(40, SlipWatch.MOST);
  }

  /** Noise of two counts, then three seconds without any. */
  @Test
  void aNoisyReadingThatGoesDeadIsFrozen() {
    Rng rng = new Rng(3);
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 10_000; k++) {
      boolean dead = k >= 5000 && k < 8000;
      double at = k < 2000 ? 0 : k < 4000 ? 0.0005 * (k - 2000) : 1;
      feed.row(k, dead ? 1 : Feed.counts(at + 0.002 * rng.gaussian(), 0.001), 1, 0);
    }
    assertThat(of(feed.trace(), ReadingFault.Kind.FROZEN))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.fromNs()).isCloseTo(5000 * MS, within(10 * MS));
              assertThat(f.toNs()).isCloseTo(8000 * MS, within(10 * MS));
            });
  }

  @Test
  void aReadingThatStaysDeadToTheEndIsFrozen() {
    Rng rng = new Rng(3);
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 6000; k++) {
      feed.row(k, k > 4000 ? 0 : Feed.counts(0.002 * rng.gaussian(), 0.001), 1, 0);
    }
    assertThat(of(feed.trace(), ReadingFault.Kind.FROZEN)).hasSize(1);
  }

  /**
   * A noiseless encoder at rest, one that dithers on an edge, one that shakes while the motor runs.
   */
  @Test
  void aQuietEncoderAtRestIsNotFrozen() {
    Rng rng = new Rng(4);
    DoubleUnaryOperator strokes = t -> t < 2 ? 0 : t < 5 ? t - 2 : 3;
    assertThat(recorded(1000, 0.001, 0, strokes).trace().faults()).isEmpty();
    assertThat(
            recorded(
                    1000,
                    0.01,
                    0,
                    t -> t < 2 ? 0.005 + 1e-4 * rng.gaussian() : strokes.applyAsDouble(t))
                .trace()
                .faults())
        .isEmpty();
    assertThat(
            recorded(
                    1000,
                    0.001,
                    0,
                    t -> strokes.applyAsDouble(t) + (t > 2 && t < 5 ? 0.004 * rng.gaussian() : 0))
                .trace()
                .faults())
        .isEmpty();
  }

  /** Stopped in the middle of a move, contacts went on changing, then it caught up in one scan. */
  @Test
  void aReadingLeftBehindByItsContactsIsFrozen() {
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 8000; k++) {
      double t = k * 1e-3;
      double seen = t > 3 && t < 3.7 ? 3 : t;
      feed.row(k, Feed.counts(0.5 * seen, 0.001), 1, t > 3.4 ? 1 : 0);
    }
    Trace trace = feed.trace();
    assertThat(trace.faults())
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.kind()).isEqualTo(ReadingFault.Kind.FROZEN);
              assertThat(f.fromNs()).isCloseTo(3000 * MS, within(3 * MS));
              assertThat(f.amount()).isCloseTo(0.35, within(0.01));
            });
  }

  @Test
  void anAdjustmentAtRestIsNotFrozen() {
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 8000; k++) {
      double t = k * 1e-3;
      double at = t < 3 ? t : t < 5 ? 3 : t - 2;
      feed.row(k, Feed.counts(0.5 * at, 0.001), 1, t > 4 ? 1 : 0);
    }
    Trace trace = feed.trace();
    assertThat(trace.faults()).isEmpty();
    assertThat(trace.changes()).extracting(Change::motion).containsExactly(Change.Motion.AT_REST);
  }
}
