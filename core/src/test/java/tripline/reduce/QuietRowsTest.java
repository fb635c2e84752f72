package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.reduce.Reduction.Shortcut;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;
import tripline.truth.Rng;

/**
 * Whether rows come one by one or in blocks, and whether quiet ones are taken together, makes no
 * difference.
 */
class QuietRowsTest {
  private static final int CHANNELS = 5;
  private static final long ALL = (1L << CHANNELS) - 1;
  private static final int ROWS = 20_000;

  @ParameterizedTest(
      name = "{0} s apart, jitter {1}, count {2}, noise {3}, modulus {4}, rarities {5}")
  @CsvSource({
    "0.001, 0,    0.0005, 0.001,  NaN,  0",
    "0.001, 0.3,  0.0005, 0.001,  NaN,  0",
    "0.001, 0,    0.0417, 0.0001, NaN,  0",
    "0.001, 0.1,  0.0005, 0.001,  NaN,  0.002",
    "0.001, 0,    0.0417, 0.02,   NaN,  0.002",
    "0.005, 0.05, 0.0005, 0.0002, NaN,  0.01",
    "0.02,  0,    0.0005, 0.001,  NaN,  0.01",
    "0.0002,0,    0.0005, 0.001,  1.0,  0.001",
    "0.001, 0.2,  0.005,  0.0001, 1.0,  0.02",
    "0.001, 0,    0.0005, 0,      NaN,  0.3",
  })
  void theTraceIsTheSame(
      double apartS, double jitter, double count, double noise, double modulus, double rarity) {
    for (int seed = 0; seed < 4; seed++) {
      OptionalDouble wrap =
          Double.isNaN(modulus) ? OptionalDouble.empty() : OptionalDouble.of(modulus);
      ReductionSettings settings = Feed.settings(CHANNELS, count, wrap, 1);
      Reduction together = new Reduction(settings, Shortcut.TAKEN);
      Reduction oneByOne = new Reduction(settings, Shortcut.AVOIDED);
      feed(together, new Rng(seed), apartS, jitter, count, noise, wrap, rarity);
      feed(oneByOne, new Rng(seed), apartS, jitter, count, noise, wrap, rarity);
      Reduction blockwise = new Reduction(settings, Shortcut.TAKEN);
      InBlocks blocks = new InBlocks(blockwise, new Rng(seed + 100));
      feed(blocks, new Rng(seed), apartS, jitter, count, noise, wrap, rarity);
      blocks.flush();
      Trace trace = together.finish();
      assertThat(trace).isEqualTo(oneByOne.finish());
      assertThat(blockwise.finish()).isEqualTo(trace);
      assertThat(trace.rows()).isEqualTo(ROWS);
      assertThat(trace.movements()).isNotEmpty();
    }
  }

  private static void feed(
      SampleSink to,
      Rng rng,
      double apartS,
      double jitter,
      double count,
      double noise,
      OptionalDouble modulus,
      double rarity) {
    double seconds = 0;
    double offset = 0;
    long timeNs = 0;
    for (int k = 0; k < ROWS; k++) {
      seconds += apartS * (rng.chance(rarity) ? rareStep(rng) : 1);
      timeNs = Math.max(timeNs, Math.round((seconds + jitter * apartS * rng.uniform()) * 1e9));
      double phase = (double) k / ROWS * 4;
      double way = Math.min(1, Math.max(0, Math.abs(phase % 2 - 1) * 1.4 - 0.2));
      offset += rng.chance(rarity / 20) ? 0.5 : 0;
      double x = 6 * way + offset;
      double reading = Math.rint((x + noise * rng.gaussian()) / count) * count;
      reading =
          modulus.isPresent()
              ? Math.floorMod(Math.round(reading * 1e6), 1_000_000) * 1e-6
              : reading;
      long closed = 0;
      for (int c = 0; c < CHANNELS; c++) {
        boolean bounce = Math.abs(x - 0.7 - c) < 0.002 && rng.chance(0.5);
        closed |= (x > 0.7 + c) ^ bounce ? 1L << c : 0;
      }
      long known = rng.chance(rarity) ? ALL >>> 1 : ALL;
      to.onRow(timeNs, rng.chance(rarity) ? Double.NaN : reading, known, closed & known);
      if (rng.chance(rarity / 10)) {
        rare(to, rng, timeNs, (closed & 1) == 0 ? ContactState.OPEN : ContactState.CLOSED);
      }
    }
  }

  /** Distance to the row before, in usual ones: the same stamp, a little early, or after a gap. */
  private static double rareStep(Rng rng) {
    return rng.chance(0.3) ? 0 : rng.chance(0.5) ? 0.5 : 40 * rng.uniform();
  }

  private static void rare(SampleSink to, Rng rng, long timeNs, ContactState state) {
    if (rng.chance(0.4)) {
      to.onMark(timeNs, Mark.NOTE, "here");
    } else if (rng.chance(0.5)) {
      to.onEdge(timeNs, 1000, 0, state);
    } else {
      to.onLoss(timeNs - 1, timeNs, 3);
    }
  }
}
