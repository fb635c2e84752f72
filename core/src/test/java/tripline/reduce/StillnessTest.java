package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.sample.Mark;

/** A contact that changes soon after, or soon before, a coarse encoder shows motion. */
class StillnessTest {
  private static final double COUNT = 1 / 24.0;

  /** Turned at 0.6 turns/s to 1.2 turns, stood still from 2 s to 5 s, turned on. */
  private static double path(double s) {
    return s < 2 ? 0.6 * s : s < 5 ? 1.2 : 1.2 + 0.6 * (s - 5);
  }

  @ParameterizedTest
  @CsvSource({
    "3.6, , AT_REST",
    "2.7, , MOVING",
    "4.5, , MOVING",
    // Who says that he has turned an adjuster there stood still.
    "2.7, 4.8, AT_REST",
    "4.5, 4.8, AT_REST",
    "4.5, 5.3, AT_REST",
    // On the move it passed, whatever is said afterwards, or it was said before.
    "1.9, 4.8, MOVING",
    "2.1, 4.8, MOVING",
    "5.2, 5.3, MOVING",
    "4.5, 4.2, MOVING",
    "4.5, 9.5, MOVING"
  })
  void saysWhetherItStood(double changesAtS, Double saidAtS, Change.Motion motion) {
    Feed feed = new Feed(Feed.settings(1, COUNT, OptionalDouble.empty(), 1));
    for (int ms = 0; ms < 10_000; ms += 5) {
      double s = ms * 1e-3;
      double turns = s > 8 ? path(8) : path(s);
      feed.row(ms, Feed.counts(turns, COUNT), 1, s >= changesAtS ? 1 : 0);
      if (saidAtS != null && Math.abs(s - saidAtS) < 1e-9) {
        feed.reduction.onMark(ms * Feed.MS, Mark.ADJUSTED, "adjusted");
      }
    }
    assertThat(feed.changes())
        .singleElement()
        .satisfies(c -> assertThat(c.motion()).isEqualTo(motion));
  }
}
