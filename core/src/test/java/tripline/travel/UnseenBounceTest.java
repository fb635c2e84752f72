package tripline.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.measure.Coverage;
import tripline.truth.Bounce;
import tripline.truth.Rng;

/** The hidden delay against contacts that bounce between samples, one change at a time. */
class UnseenBounceTest {
  private static final double MEAN_S = 0.001557;
  private static final double TOGGLE_S = 0.0004;
  private static final int CHANGES = 200_000;

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.02, 0.05})
  void meanAndSpreadAreThoseOfSampledBursts(double gapS) {
    Rng rng = new Rng(77);
    double sum = 0;
    double squares = 0;
    for (int k = 0; k < CHANGES; k++) {
      double late = late(rng, gapS);
      sum += late;
      squares += late * late;
    }
    double mean = sum / CHANGES;
    double bracket = gapS * gapS / 12;
    assertThat(UnseenBounce.lateS(gapS)).isCloseTo(mean, within(1.0e-4));
    assertThat(Math.sqrt(bracket + Math.pow(UnseenBounce.uS(gapS), 2)))
        .isCloseTo(Math.sqrt(squares / CHANGES - mean * mean), within(0.02 * gapS));
  }

  /** Edges evenly apart, and at chance times as of a contact that dances on its spring. */
  @ParameterizedTest
  @CsvSource({
    "EVEN, 0.001",
    "EVEN, 0.002",
    "EVEN, 0.005",
    "EVEN, 0.01",
    "EVEN, 0.02",
    "EVEN, 0.05",
    "CHANCE, 0.0005",
    "CHANCE, 0.001",
    "CHANCE, 0.002",
    "CHANCE, 0.005",
    "CHANCE, 0.01",
    "CHANCE, 0.02",
    "CHANCE, 0.05"
  })
  void theIntervalHoldsTheChange(Edges edges, double gapS) {
    Rng rng = new Rng(78);
    double half = Coverage.of(UnseenBounce.uS(gapS), gapS / Math.sqrt(12)).halfWidth(0.95);
    int held = 0;
    for (int k = 0; k < CHANGES; k++) {
      double late = edges == Edges.EVEN ? late(rng, gapS) : lateOfChance(rng, gapS);
      held += Math.abs(late - UnseenBounce.lateS(gapS)) <= half ? 1 : 0;
    }
    assertThat((double) held / CHANGES).isBetween(0.90, edges == Edges.EVEN ? 1.0 : 0.99);
  }

  private enum Edges {
    EVEN,
    CHANCE
  }

  /** The same with the edges of a burst anywhere in it. */
  private static double lateOfChance(Rng rng, double gapS) {
    double burstS = Bounce.PUBLISHED.mostS() * StrictMath.pow(rng.uniform(), 2.98);
    int pairs = (int) Math.round(burstS / (2 * TOGGLE_S));
    double[] at = new double[Math.max(0, 2 * pairs - 1)];
    for (int k = 0; k < at.length; k++) {
      at[k] = rng.uniform() * burstS;
    }
    double firstEdgeS = rng.uniform() * gapS;
    double sampleS = gapS;
    while (pairs > 0 && sampleS < firstEdgeS + burstS && back(at, sampleS - firstEdgeS)) {
      sampleS += gapS;
    }
    return sampleS - gapS / 2 - firstEdgeS;
  }

  private static boolean back(double[] at, double timeS) {
    return Arrays.stream(at).filter(t -> t <= timeS).count() % 2 == 1;
  }

  /** Middle of the bracket less the time of the first edge, for one change with its burst. */
  private static double late(Rng rng, double gapS) {
    double burstS = -MEAN_S * StrictMath.log(1 - rng.uniform());
    double firstEdgeS = rng.uniform() * gapS;
    double sampleS = gapS;
    while (sampleS < firstEdgeS + burstS && (long) ((sampleS - firstEdgeS) / TOGGLE_S) % 2 == 1) {
      sampleS += gapS;
    }
    return sampleS - gapS / 2 - firstEdgeS;
  }
}
