package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.job.End;
import tripline.truth.HandStyle;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;

/** Moves and rests of paths that the model truly took. */
class MovementsTest {
  private static final double STOP_U = 0.01;

  /** Movements follow each other without a gap, rests and moves as they must. */
  private static void assertWhole(Trace trace) {
    List<Movement> all = trace.movements();
    for (int i = 1; i < all.size(); i++) {
      assertThat(all.get(i).fromNs()).isEqualTo(all.get(i - 1).toNs());
      assertThat(all.get(i) instanceof Movement.Rest && all.get(i - 1) instanceof Movement.Rest)
          .isFalse();
    }
    assertThat(all.get(all.size() - 1).toNs()).isEqualTo(trace.lastNs());
  }

  @ParameterizedTest
  @CsvSource({
    "1000,0.0005,0.001",
    "1000,0.0005,0.01",
    "200,0.005,0",
    "50,0.0005,0.003",
    "200,0.0416667,0.001"
  })
  void aHandStrokeThereAndBack(double rateHz, double resolution, double noise) {
    for (int seed = 1; seed <= 4; seed++) {
      Valve valve = new Valve(seed, 0.3).rest(1);
      HandStyle style = HandStyle.somebody(valve.rng, STOP_U);
      valve.by(
          hand -> {
            hand.to(6);
            hand.to(2);
          },
          style);
      valve.rest(1);
      Trace trace = valve.recorded(rateHz, resolution, noise);
      assertWhole(trace);
      double band = Math.max(0.02, resolution);
      assertThat(Valve.moves(trace)).extracting(Movement.Move::sign).containsExactly(1, -1);
      Movement.Move out = Valve.moves(trace).get(0);
      assertThat(out.from()).isCloseTo(0.3, within(band));
      assertThat(out.to()).isCloseTo(6, within(band));
      assertThat(out.run().unitsPerS())
          .isCloseTo(style.runSpeed(), within(0.25 * style.runSpeed()));
      assertThat(Valve.moves(trace).get(1).to()).isCloseTo(2, within(band));
      Movement.Rest last = Valve.rests(trace).get(Valve.rests(trace).size() - 1);
      assertThat(last.reading()).isCloseTo(valve.actuator.handwheel(), within(4 * last.u() + 1e-4));
      assertThat(last.grain() != Movement.Grain.NOISE).isEqualTo(resolution > 2 * noise);
    }
  }

  /** Ten minutes at rest under noise is one rest, on fine counts and on coarse ones. */
  @ParameterizedTest
  @CsvSource({"0.0005,0.01", "0.0005,0.001", "0.0416667,0.02", "0.01,0"})
  void aLongNoisyRestIsOneRest(double resolution, double noise) {
    Rng rng = new Rng(77);
    Feed feed =
        Feed.of(1, resolution)
            .path(
                0, 600_000, 5, t -> Feed.counts(3.2083 + noise * rng.gaussian(), resolution), 1, 0);
    Trace trace = feed.trace();
    assertThat(trace.movements())
        .singleElement()
        .satisfies(
            m -> {
              Movement.Rest rest = (Movement.Rest) m;
              assertThat(rest.reading()).isCloseTo(3.2083, within(resolution / 2 + 1e-4));
              assertThat(rest.low()).isLessThanOrEqualTo(rest.reading());
              assertThat(rest.high()).isGreaterThanOrEqualTo(rest.reading());
            });
    assertThat(trace.faults()).isEmpty();
  }

  @Test
  void aTurnBackWithoutAPauseEndsTheMove() {
    Trace trace =
        Feed.of(1, 0.001)
            .path(0, 10_000, 2, t -> Feed.counts(1 - Math.abs(0.5 * t - 2.5), 0.001), 1, 0)
            .trace();
    assertThat(Valve.moves(trace)).extracting(Movement.Move::sign).containsExactly(1, -1);
    assertThat(Valve.moves(trace).get(0).to()).isCloseTo(1, within(0.02));
    assertThat(Valve.moves(trace).get(0).stopping().stood()).isFalse();
  }

  /**
   * Against the stop the handwheel winds up and springs back: overshoot, in the move's direction.
   */
  @Test
  void overshootIsWhatSprangBack() {
    Trace trace =
        Feed.of(1, 0.001)
            .path(
                0,
                12_000,
                2,
                t ->
                    t < 2 ? 0 : t < 6 ? 0.5 * (t - 2) : t < 6.2 ? 2 : t < 6.3 ? 2 - (t - 6.2) : 1.9,
                1,
                0)
            .trace();
    Movement.Move move = Valve.moves(trace).get(0);
    assertThat(move.sign()).isEqualTo(1);
    Movement.Rest rest = Valve.rests(trace).get(Valve.rests(trace).size() - 1);
    assertThat(rest.reading()).isCloseTo(1.9, within(0.005));
    double sprang =
        Valve.moves(trace).size() == 1 ? move.stopping().overshoot() : move.to() - rest.reading();
    assertThat(sprang).isBetween(0.05, 0.11);
  }

  /** Noise of a quarter of a count makes a coarse encoder flicker, and so tells where it rests. */
  @Test
  void aCoarseRestThatFlickersIsFoundWithinItsCount() {
    double quantum = 1 / 24.0;
    Rng rng = new Rng(77);
    Feed feed = Feed.of(1, quantum);
    double from = 2 + 0.3 * quantum;
    double to = 3 - 0.2 * quantum;
    feed.path(
        0,
        6_000,
        5,
        s -> {
          // A hand starts slowly: for a fifth of a second within the count it stood on.
          double moved = Math.min(1, Math.max(0, s - 2) * Math.max(0, s - 2) / 2);
          double x = from + (to - from) * moved;
          return quantum * Math.rint((x + 0.01 * rng.gaussian()) / quantum);
        },
        1,
        0);
    Trace trace = feed.reduction.finish();
    assertWhole(trace);
    List<Movement.Rest> rests = Valve.rests(trace);
    assertThat(rests).hasSize(2);
    for (int i = 0; i < 2; i++) {
      Movement.Rest rest = rests.get(i);
      assertThat(rest.reading()).isCloseTo(i == 0 ? from : to, within(3 * rest.u()));
      assertThat(rest.u()).isBetween(0.01 * quantum, 0.12 * quantum);
      assertThat(rest.grain()).isEqualTo(Movement.Grain.FLICKER);
    }
  }

  /** Sparse rows: the rest lasts through the silence. */
  @Test
  void silenceOfASparseLoggerIsARest() {
    Valve valve = new Valve(5, 0.3).rest(1);
    valve.by(
        hand -> {
          hand.to(4);
          valve.rest(20);
          hand.to(8);
        },
        HandStyle.somebody(valve.rng, STOP_U));
    Trace trace =
        valve.recorded(LoggerPlan.plain(100).with(LoggerPlan.Writes.CHANGES_ONLY), 0.005, 0);
    assertThat(trace.losses()).isEmpty();
    assertThat(Valve.rests(trace))
        .anySatisfy(
            r -> {
              assertThat(r.toNs() - r.fromNs()).isGreaterThan(19_000_000_000L);
              assertThat(r.reading()).isCloseTo(4, within(0.01));
            });
    assertThat(Valve.moves(trace)).extracting(Movement.Move::sign).containsExactly(1, 1);
  }

  @Test
  void speedOfASteadyRun() {
    Valve valve = new Valve(6, 1).rest(1);
    valve.motor(MotorPlan.steady(0.6)).run(End.OPEN, 10, PoweredStroke.Cause.OPERATOR);
    valve.rest(1);
    Movement.Move move = Valve.moves(valve.recorded(1000, 0.0005, 0.001)).get(0);
    assertThat(move.run().unitsPerS()).isCloseTo(0.6, within(4 * move.run().u() + 1e-4));
    assertThat(move.run().u()).isLessThan(0.01);
    assertThat(move.run().ripple()).isLessThan(0.05);
  }

  /**
   * Onset of deceleration and standstill of motor strokes that the operator cuts, against the truth
   * and the uncertainty stated.
   */
  @ParameterizedTest
  @CsvSource({"1000,0.0005,0.001", "200,0.0005,0.001", "1000,0.005,0"})
  void stoppingAgainstTheTruth(double rateHz, double resolution, double noise) {
    int onsets = 0;
    int onsetInside = 0;
    int stillInside = 0;
    int runs = 12;
    for (int seed = 0; seed < runs; seed++) {
      Valve valve = new Valve(900 + seed, 1).rest(1);
      double speed = valve.rng.uniform(0.3, 1.0);
      PoweredStroke truth =
          valve.motor(MotorPlan.steady(speed)).run(End.OPEN, 6, PoweredStroke.Cause.OPERATOR);
      valve.rest(2);
      List<Movement.Move> moves = Valve.moves(valve.recorded(rateHz, resolution, noise));
      assertThat(moves).hasSize(1);
      Stopping stop = moves.get(0).stopping();
      assertThat(stop.stood()).isTrue();
      assertThat(stop.stillReading()).isCloseTo(truth.stillX(), within(4 * stop.stillU() + 1e-4));
      assertThat(stop.overshoot()).isLessThan(0.01);
      stillInside +=
          Math.abs(stop.stillNs() * 1e-9 - truth.stillS()) < 2.5e-9 * stop.stillUNs() ? 1 : 0;
      if (stop.hasOnset()) {
        onsets++;
        double off = stop.onsetNs() * 1e-9 - truth.onsetS();
        onsetInside += Math.abs(off) < 2.5e-9 * stop.onsetUNs() ? 1 : 0;
        assertThat(Math.abs(off)).isLessThan(0.15);
        assertThat(stop.onsetReading()).isCloseTo(truth.onsetX(), within(0.1));
      }
    }
    assertThat(onsets).isGreaterThanOrEqualTo(runs * 9 / 10);
    assertThat(onsetInside).isGreaterThanOrEqualTo(onsets * 9 / 10);
    assertThat(stillInside).isGreaterThanOrEqualTo(runs * 9 / 10);
  }

  /** Asked again while the valve moves: as if the recording ended there. */
  @Test
  void askedInTheMiddleOfAMove() {
    Feed feed = Feed.of(1, 0.001).path(0, 3000, 2, t -> t < 1 ? 0 : 0.5 * (t - 1), 1, 0);
    Trace early = feed.trace();
    assertThat(Valve.moves(early)).hasSize(1);
    assertThat(Valve.moves(early).get(0).to()).isCloseTo(1, within(0.02));
    Trace late = feed.path(3000, 6000, 2, t -> Math.min(0.5 * (t - 1), 1.5), 1, 0).trace();
    Trace once =
        Feed.of(1, 0.001)
            .path(0, 3000, 2, t -> t < 1 ? 0 : 0.5 * (t - 1), 1, 0)
            .path(3000, 6000, 2, t -> Math.min(0.5 * (t - 1), 1.5), 1, 0)
            .trace();
    assertThat(late.movements()).isEqualTo(once.movements());
  }
}
