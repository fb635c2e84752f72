package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.truth.Rng;

/** Rests of known place whose readings are really rounded, and what is then said of their place. */
class CountDitherTest {
  private static final double QUANTUM = 1 / 24.0;
  private static final double RECTANGLE = 1 / Math.sqrt(12);
  private static final int READINGS = 150;

  /** One rest whose readings are these, in counts, rounded to counts. */
  private static CountTally shown(int readings, IntToDoubleFunction counts) {
    CountTally tally = new CountTally();
    for (int i = 0; i < readings; i++) {
      tally.add(Math.rint(counts.applyAsDouble(i)) * QUANTUM, 1, QUANTUM);
    }
    return tally;
  }

  private static CountTally noisy(Rng rng, double at, double noise) {
    return shown(READINGS, i -> at + noise * rng.gaussian());
  }

  /** A few rests a recording, as a technician's strokes have; the noise is not told. */
  @ParameterizedTest(name = "noise {0} count")
  @CsvSource({"0.05, 0.27", "0.1, 0.2", "0.24, 0.07", "0.4, 0.06"})
  void theIntervalHoldsWhereARestTrulyIsAndIsNarrow(double noise, double mostRms) {
    Rng rng = new Rng(20_26);
    int held = 0;
    double ratios = 0;
    int of = 0;
    double squares = 0;
    for (int recording = 0; recording < 150; recording++) {
      List<Double> truths = new ArrayList<>();
      List<CountTally> rests = new ArrayList<>();
      for (int r = 0; r < 5; r++) {
        truths.add(rng.uniform(100, 200));
        rests.add(noisy(rng, truths.get(r), noise));
      }
      CountDither.Within[] within = CountDither.of(rests, QUANTUM);
      for (int r = 0; r < 5; r++) {
        CountDither.Within w = within[r];
        if (w != null) {
          double off = w.reading() / QUANTUM - truths.get(r);
          squares += off * off;
          ratios += Math.pow(off / (w.u() / QUANTUM), 2);
          held += Math.abs(off) <= 1.96 * w.u() / QUANTUM ? 1 : 0;
          of++;
        }
      }
    }
    assertThat(of).isGreaterThan(400);
    assertThat(Math.sqrt(squares / of)).isLessThan(mostRms);
    // The edges of these counts are spaced evenly, which is not relied on.
    assertThat(Math.sqrt(ratios / of)).isBetween(0.5, 1.1);
    assertThat((double) held / of).isGreaterThan(0.93);
  }

  @Test
  void twoCountsEquallyOftenAreTheEdgeBetweenThem() {
    Rng rng = new Rng(4);
    CountDither.Within w =
        CountDither.of(
            List.of(shown(READINGS, i -> 7.5 + (rng.chance(0.5) ? 0.1 : -0.1))), QUANTUM)[0];
    assertThat(w.reading() / QUANTUM).isCloseTo(7.5, within(0.03));
    assertThat(w.u() / QUANTUM).isLessThan(0.06);
  }

  @Test
  void mirroredReadingsAreThereMirrored() {
    CountTally up = noisy(new Rng(9), 3.3, 0.2);
    Rng same = new Rng(9);
    CountTally down = shown(READINGS, i -> -(3.3 + 0.2 * same.gaussian()));
    CountDither.Within a = CountDither.of(List.of(up), QUANTUM)[0];
    CountDither.Within b = CountDither.of(List.of(down), QUANTUM)[0];
    assertThat(a.reading()).isCloseTo(-b.reading(), within(1e-9));
    assertThat(a.u()).isCloseTo(b.u(), within(1e-9));
  }

  /** Whether a steady rest stands in the middle of its count is told by the noise of the others. */
  @Test
  void aSteadyRestIsNarrowedByTheNoiseOfOthers() {
    Rng rng = new Rng(11);
    CountTally steady = shown(READINGS, i -> 5.0);
    List<CountTally> rests =
        List.of(steady, noisy(rng, 8.4, 0.25), noisy(rng, 2.6, 0.25), noisy(rng, 9.5, 0.25));
    CountDither.Within w = CountDither.of(rests, QUANTUM)[0];
    assertThat(w.reading() / QUANTUM).isCloseTo(5, within(0.01));
    assertThat(w.u() / QUANTUM).isBetween(0.02, 0.6 * RECTANGLE);
  }

  @Test
  void withoutFlickerNothingIsSaid() {
    CountTally steady = shown(READINGS, i -> 5.0);
    CountTally creeps = shown(READINGS, i -> 5.3 + 0.4 * i / READINGS);
    CountTally swings = shown(READINGS, i -> 5.5 + 0.4 * Math.sin(4 * Math.PI * i / READINGS));
    assertThat(CountDither.of(List.of(steady, creeps, swings), QUANTUM)).containsOnlyNulls();
    Rng rng = new Rng(2);
    CountTally arrives = shown(READINGS, i -> 5 + 0.5 * Math.exp(-i / 5.0) + 0.02 * rng.gaussian());
    assertThat(arrives.turns()).isPositive();
    assertThat(CountDither.of(List.of(arrives), QUANTUM)).containsOnlyNulls();
    CountTally flickers = noisy(new Rng(3), 5.5, 0.2);
    assertThat(CountDither.of(List.of(creeps, swings, flickers), QUANTUM))
        .satisfies(w -> assertThat(w[0]).isNull(), w -> assertThat(w[1]).isNull())
        .satisfies(w -> assertThat(w[2]).isNotNull());
  }

  @Test
  void readingsThatAreNotOnCountsOfOneSizeTellNothing() {
    Rng rng = new Rng(5);
    CountTally off = shown(READINGS, i -> 5.5 + 0.2 * rng.gaussian());
    off.add(5.25 * QUANTUM, 1, QUANTUM);
    CountTally far = shown(READINGS, i -> 5.5 + 0.2 * rng.gaussian());
    far.add(40 * QUANTUM, 1, QUANTUM);
    CountTally finer = noisy(rng, 5.5, 0.2);
    assertThat(off.tells(QUANTUM)).isFalse();
    assertThat(far.tells(QUANTUM)).isFalse();
    assertThat(finer.tells(QUANTUM / 2)).isFalse();
    assertThat(finer.tells(QUANTUM * (1 + 1e-12))).isTrue();
    assertThat(new CountTally().tells(QUANTUM)).isFalse();
  }

  @Test
  void aCopyGoesOnByItself() {
    CountTally one = noisy(new Rng(6), 5.5, 0.2);
    CountTally copy = one.copy();
    assertThat(CountDither.of(List.of(copy), QUANTUM))
        .isEqualTo(CountDither.of(List.of(one), QUANTUM));
    copy.add(9 * QUANTUM, 1, QUANTUM);
    assertThat(one.total()).isEqualTo(READINGS);
    assertThat(copy.total()).isEqualTo(READINGS + 1);
  }
}
