package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Bit errors on the line, from one in a million to one in a thousand. A frame whose bytes and whose
 * delimiter before it arrived unchanged must be handed on; anything handed on must be what was
 * sent; the first frame after any damage must be found. {@link LinkStudy} sends more of them.
 */
class NoiseTest {
  private static final int FRAMES = 40_000;

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e-5, 1e-4, 3e-4, 1e-3})
  void nothingDamagedIsHandedOnAndNothingWholeIsDropped(double bitErrorRate) {
    NoiseRun run = NoiseRun.of(bitErrorRate, FRAMES, 0);
    holds(run);
    if (FRAMES * bitErrorRate > 1) {
      assertThat(run.counters().damaged()).isPositive();
    }
  }

  /** What every run must show. */
  static void holds(NoiseRun run) {
    LinkCounters counters = run.counters();
    assertThat(run.wrong()).as(run.words()).isZero();
    assertThat(run.dropped()).as(run.words()).isZero();
    assertThat(run.handedOn()).isEqualTo(run.due()).isEqualTo(counters.messages());
    assertThat(run.unsynchronised()).as(run.words()).isLessThanOrEqualTo(1);
    assertThat(counters.malformed() + counters.unknown() + counters.repeated()).isZero();
    assertThat(counters.bytes())
        .isEqualTo(
            counters.delivered() + counters.skipped() + counters.idle() + counters.pending());
    assertThat(counters.lost())
        .isBetween(run.frames() - run.handedOn() - 64, run.frames() - run.handedOn());
  }
}
