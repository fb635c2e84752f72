package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The variance of a mean of edge times against edges of an even motion that are really timed by a
 * scan of unknown phase, many times over.
 */
class SamplingBeatTest {
  private static final int EDGES = 17;
  private static final int TRIALS = 20_000;

  /** The solution of a constant: every edge as much as any other. */
  private static final double[] MEAN = {1};

  /** Standard error of a variance of so many trials, with room for a rectangular law's. */
  private static final double WITHIN = 0.04;

  @ParameterizedTest(name = "{0} scans a count, jitter {1}")
  @CsvSource({"2.618, 0", "2.382, 0", "5.854, 0", "17.236, 0", "2.618, 0.05"})
  void itIsWhatEdgesTimedByAScanHave(double scansPerCount, double jitter) {
    double byChance = 1 / 12.0 / EDGES;
    double stated = byChance + beyondChance(scansPerCount, jitter);
    double seen = simulated(scansPerCount, jitter);
    // The sinusoids beyond those followed, a seventh of the variance, are taken for chance.
    assertThat(stated).isCloseTo(seen, within(WITHIN * seen + byChance / 6));
    assertThat(seen).isLessThan(byChance);
  }

  @ParameterizedTest(name = "{0} scans a count, jitter {1}")
  @CsvSource({"3, 0", "3.02, 0", "4, 0", "2.5, 0", "3, 0.1"})
  void whereTheBeatStandsStillAveragingGainsLittle(double scansPerCount, double jitter) {
    double byChance = 1 / 12.0 / EDGES;
    double seen = simulated(scansPerCount, jitter);
    assertThat(byChance + beyondChance(scansPerCount, jitter)).isBetween(0.75 * seen, 1.05 * seen);
    assertThat(seen).isGreaterThan(3 * byChance);
  }

  @Test
  void aWholeNumberOfScansACountAveragesNothingOut() {
    double stated = 1 / 12.0 / EDGES + beyondChance(4, 0);
    assertThat(stated).isBetween(0.85 / 12, 1 / 12.0);
    assertThat(simulated(4, 0)).isCloseTo(1 / 12.0, within(WITHIN / 12));
  }

  @Test
  void noiseOfAStepLeavesNothingOfIt() {
    assertThat(SamplingBeat.remains(1)).isLessThan(1e-15);
    SamplingBeat beat = beat(4, 0, 1);
    assertThat(beat.beyondChance(MEAN, 1, 1, 1)).isCloseTo(0, within(1e-12));
  }

  @Test
  void scatterThatStepAndNoiseDoNotExplainIsTakenForNoise() {
    SamplingBeat quiet = beat(4, 0, 0);
    double s = 0.2;
    assertThat(quiet.beyondChance(MEAN, 1, 1, 1 + EdgeTimer.FLICKER * s / EDGES))
        .isCloseTo(beat(4, 0, s).beyondChance(MEAN, 1, 1, 1), within(1e-12));
  }

  private static double beyondChance(double scansPerCount, double jitter) {
    return beat(scansPerCount, jitter, 0).beyondChance(MEAN, 1, 1, 1);
  }

  /** Steps of one; the mean of all edges. */
  private static SamplingBeat beat(double scansPerCount, double jitter, double noise) {
    SamplingBeat beat = new SamplingBeat(scansPerCount, 1, noise, jitter, 1.0 / EDGES);
    double[] p = new double[FitWindow.TERMS];
    p[0] = 1;
    for (int i = 0; i < EDGES; i++) {
      beat.add(i, p);
    }
    return beat;
  }

  /** Variance of the mean error of edges put half-way between the scans about them, in steps. */
  private static double simulated(double scansPerCount, double jitter) {
    Random random = new Random(4711);
    double squares = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double phase = random.nextDouble();
      double sum = 0;
      for (int i = 0; i < EDGES; i++) {
        double at = phase + i * scansPerCount;
        double scan = Math.floor(at);
        double before = scan + jitter * random.nextGaussian();
        double after = scan + 1 + jitter * random.nextGaussian();
        if (at < before) {
          after = before;
          before = scan - 1 + jitter * random.nextGaussian();
        } else if (at > after) {
          before = after;
          after = scan + 2 + jitter * random.nextGaussian();
        }
        sum += (before + after) / 2 - at;
      }
      squares += sum * sum / EDGES / EDGES;
    }
    return squares / TRIALS;
  }
}
