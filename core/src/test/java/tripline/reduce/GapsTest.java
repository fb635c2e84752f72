package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static tripline.reduce.Feed.MS;
import static tripline.reduce.Feed.NONE;

import org.junit.jupiter.api.Test;
import tripline.truth.Rng;

/** Samples missing, and silence that is none. */
class GapsTest {
  /** Dense rows of 1 ms with a contact, noisy position, some left out. */
  private static Feed dense(java.util.function.IntPredicate dropped, double jitter) {
    Rng rng = new Rng(5);
    Feed feed = Feed.of(1, 0.0005);
    for (int k = 0; k < 5000; k++) {
      double ms = k + jitter * (rng.uniform() - 0.5);
      double reading = Feed.counts(0.0005 * k + 0.001 * rng.gaussian(), 0.0005);
      if (!dropped.test(k)) {
        feed.row(ms, reading, 1, 0);
      }
    }
    return feed;
  }

  @Test
  void droppedRowsOfARegularLoggerAreCounted() {
    Feed feed = dense(k -> (k > 1000 && k < 1006) || (k >= 3000 && k < 3100), 0);
    assertThat(feed.trace().losses())
        .extracting(Loss::what, Loss::fromNs, Loss::toNs, Loss::samples)
        .containsExactly(
            tuple(Loss.What.ROWS, 1000 * MS, 1006 * MS, 5L),
            tuple(Loss.What.ROWS, 2999 * MS, 3100 * MS, 100L));
  }

  @Test
  void jitterAloneIsNoLoss() {
    assertThat(dense(k -> false, 0.6).trace().losses()).isEmpty();
  }

  /** Lost at random here and there, more often than gaps are told one by one: all are counted. */
  @Test
  void manyLossesAreAllCounted() {
    int n = 200_000;
    Feed feed = Feed.of(1, 0.001);
    long dropped = 0;
    for (int k = 0; k < n; k++) {
      if (k % 200 == 77) {
        dropped++;
      } else {
        feed.row(k, k * 1e-4, 1, 0);
      }
    }
    Trace trace = feed.trace();
    assertThat(trace.losses()).hasSize(GapLog.MOST + 1);
    assertThat(trace.losses().stream().mapToLong(Loss::samples).sum()).isEqualTo(dropped);
  }

  /** A slow path on whole counts, written only when it changes: silence while it rests. */
  @Test
  void silenceOfALoggerThatWritesChangesIsNoLoss() {
    assertThat(onChange(t -> t).trace().losses()).isEmpty();
  }

  private static Feed onChange(java.util.function.DoubleUnaryOperator clock) {
    Feed feed = Feed.of(1, 1).row(0, 0, 1, 0);
    double written = 0;
    for (int k = 1; k < 3000; k++) {
      double t = clock.applyAsDouble(k * 0.01);
      // Moves for 3 s, rests for 4 s, and so on; 40 counts a second.
      double moved = Math.floor(t / 7) * 3 + Math.min(t % 7, 3);
      double reading = Math.floor(40 * moved);
      if (reading != written) {
        feed.row(10 * k, reading, 0, 0);
        written = reading;
      }
    }
    return feed;
  }

  /** The path goes on unseen from 9 s to 9.9 s: 36 counts over a silence. */
  @Test
  void aReadingThatJumpedOverASilenceWasLost() {
    Trace trace = onChange(t -> t > 9 && t < 9.9 ? 9 : t).trace();
    assertThat(trace.losses())
        .singleElement()
        .satisfies(
            loss -> {
              assertThat(loss.fromNs()).isBetween(8950 * MS, 9010 * MS);
              assertThat(loss.toNs()).isBetween(9890 * MS, 9930 * MS);
              assertThat(loss.samples()).isEqualTo(-1);
              assertThat(loss.moved()).isBetween(34.0, 38.0);
            });
  }

  /** A motor at an even speed on an encoder that writes changes: even rows, and still no loss. */
  @Test
  void anEvenSpeedDoesNotMakeALoggerWriteAll() {
    Feed feed = Feed.of(1, 1).row(0, 0, 1, 0);
    for (int k = 1; k < 400; k++) {
      feed.row(10 * k + (k > 300 ? 25 : 0), k, 0, 0);
    }
    assertThat(feed.trace().losses()).isEmpty();
  }

  /** Rows go on with contacts, the position cells stay empty for a while. */
  @Test
  void missingPositionsAloneArePositionLoss() {
    Feed feed = Feed.of(1, 0.01);
    for (int k = 0; k < 4000; k++) {
      double reading = Feed.counts(0.001 * k, 0.01);
      feed.row(k, k >= 2000 && k < 2300 ? NONE : reading, 1, 0);
    }
    assertThat(feed.trace().losses())
        .extracting(Loss::what, Loss::fromNs, Loss::toNs, Loss::samples)
        .containsExactly(tuple(Loss.What.POSITION, 1999 * MS, 2300 * MS, 300L));
  }

  @Test
  void whatTheLinkReportsIsKeptAndNotToldTwice() {
    Feed feed = Feed.of(1, 0.001).path(0, 1000, 1, t -> t, 1, 0);
    feed.reduction.onLoss(999 * MS, 1500 * MS, 500);
    feed.path(1500, 2500, 1, t -> t, 1, 0);
    assertThat(feed.trace().losses())
        .filteredOn(l -> l.what() == Loss.What.ROWS)
        .extracting(Loss::fromNs, Loss::toNs, Loss::samples)
        .containsExactly(tuple(999 * MS, 1500 * MS, 500L));
  }

  @Test
  void moreReportedLossesThanAreKeptRunTogether() {
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 1000; k++) {
      feed.row(100 * k, 0, 1, 0);
      feed.reduction.onLoss(100L * k * MS, (100L * k + 50) * MS, 2);
    }
    Trace trace = feed.trace();
    assertThat(trace.losses()).hasSize(GapLog.MOST);
    assertThat(trace.losses().stream().mapToLong(Loss::samples).sum()).isEqualTo(2000);
    assertThat(trace.losses().get(GapLog.MOST - 1).toNs()).isEqualTo(99_950 * MS);
  }

  @Test
  void repeatedStampsAreCountedOnceARow() {
    Feed feed = Feed.of(2, 0.001);
    for (int k = 0; k < 100; k++) {
      feed.row(k, 0.001 * k, 1, 0);
      if (k >= 40 && k < 43) {
        feed.row(k, 0.001 * k, 1, 0);
      }
    }
    assertThat(feed.trace().faults())
        .containsExactly(new ReadingFault(ReadingFault.Kind.REPEATED_STAMP, 40 * MS, 40 * MS, 3));
  }

  /** Contact row and position row of one moment. */
  @Test
  void differentCellsOfOneStampAreNoRepeat() {
    Feed feed = Feed.of(2, 0.001);
    for (int k = 0; k < 100; k++) {
      feed.row(k, NONE, 1, 0).row(k, NONE, 2, 0).row(k, 0.001 * k, 0, 0);
    }
    assertThat(feed.trace().faults()).isEmpty();
  }

  @Test
  void aMarkBeforeTheFirstRowMakesNoRhythm() {
    Feed feed = Feed.of(1, 0.001);
    feed.reduction.onMark(0, tripline.sample.Mark.NOTE, "begin");
    feed.path(5000, 7000, 1, t -> t, 1, 0);
    Trace trace = feed.trace();
    assertThat(trace.firstNs()).isZero();
    assertThat(trace.losses()).isEmpty();
    assertThat(trace.scanNs()).isEqualTo(MS);
  }
}
