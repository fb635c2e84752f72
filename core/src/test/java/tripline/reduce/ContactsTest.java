package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static tripline.reduce.Feed.MS;
import static tripline.reduce.Feed.NONE;

import org.junit.jupiter.api.Test;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.truth.Rng;

/** What counts as a change of a contact, and between which stamps its first edge lies. */
class ContactsTest {
  private static void assertBracket(Change c, double beforeMs, double afterMs) {
    assertThat(c.beforeNs()).isEqualTo(Math.round(beforeMs * MS));
    assertThat(c.afterNs()).isEqualTo(Math.round(afterMs * MS));
  }

  /** Rows every ms with channel 0 as the string tells from 0 ms on, then held for 50 ms. */
  private static Feed sampled(String states) {
    Feed feed = Feed.of(1, 0);
    for (int ms = 0; ms < states.length() + 50; ms++) {
      char state = states.charAt(Math.min(ms, states.length() - 1));
      feed.row(ms, NONE, 1, state == '1' ? 1 : 0);
    }
    return feed;
  }

  @Test
  void aCleanChangeLiesBetweenTheLastOldAndTheFirstNewSample() {
    Change c = only(sampled("00001"));
    assertBracket(c, 3, 4);
    assertThat(c.to()).isEqualTo(ContactState.CLOSED);
    assertThat(c.settledNs()).isEqualTo(4 * MS);
    assertThat(c.bounces()).isZero();
    assertThat(c.gapNs()).isEqualTo(MS);
    assertThat(c.timeNs()).isEqualTo(3 * MS + MS / 2);
  }

  @Test
  void aBouncingChangeIsPlacedAtItsFirstEdge() {
    Change c = only(sampled("000010110001"));
    assertBracket(c, 3, 4);
    assertThat(c.bounces()).isEqualTo(4);
    assertThat(c.settledNs()).isEqualTo(11 * MS);
  }

  @Test
  void aBurstThatEndsWhereItBeganIsADisturbance() {
    Trace trace = sampled("0000101110").trace();
    assertThat(trace.changes()).isEmpty();
    assertThat(trace.disturbances())
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.fromNs()).isEqualTo(4 * MS);
              assertThat(d.toNs()).isEqualTo(9 * MS);
              assertThat(d.edges()).isEqualTo(4);
            });
    assertThat(trace.end()).isEqualTo(trace.start());
  }

  /** The settling time is 10 ms: held from sample to sample for exactly that long is settled. */
  @Test
  void holdingForExactlyTheSettlingTimeSettles() {
    String held = "0000" + "1".repeat(11) + "0";
    assertThat(sampled(held).changes())
        .extracting(Change::to, Change::afterNs)
        .containsExactly(tuple(ContactState.CLOSED, 4 * MS), tuple(ContactState.OPEN, 15 * MS));
    String tooShort = "0000" + "1".repeat(10) + "0";
    assertThat(sampled(tooShort).changes()).isEmpty();
    assertThat(sampled(tooShort).trace().disturbances()).hasSize(1);
  }

  @Test
  void aChangeInTheLastSamplesIsToldOnceItHasHeld() {
    Feed feed = Feed.of(1, 0);
    for (int ms = 0; ms <= 29; ms++) {
      feed.row(ms, NONE, 1, ms >= 20 ? 1 : 0);
    }
    assertThat(feed.changes()).isEmpty();
    assertThat(feed.trace().end().closed()).isZero();
    feed.row(30, NONE, 1, 1);
    assertThat(feed.changes()).hasSize(1);
    assertThat(feed.trace().end().closed()).isEqualTo(1);
    assertThat(feed.changes()).as("asking again changes nothing").hasSize(1);
  }

  @Test
  void aFirstStateIsNoChange() {
    Feed feed = Feed.of(2, 0);
    feed.row(0, NONE, 0, 0).row(1, NONE, 1, 1).row(2, NONE, 1, 1).row(60, NONE, 3, 3);
    feed.row(120, NONE, 3, 3);
    Trace trace = feed.trace();
    assertThat(trace.changes()).isEmpty();
    assertThat(trace.start()).isEqualTo(new Trace.States(3, 3));
  }

  @Test
  void aChannelNeverReadIsNotKnown() {
    assertThat(Feed.of(2, 0).row(0, NONE, 1, 3).row(30, NONE, 1, 3).trace().start())
        .isEqualTo(new Trace.States(1, 1));
  }

  /** On-change rows: the state held until just before the row that tells the new one. */
  @Test
  void aLoggerThatWritesOnlyChangesBracketsByItsOtherRows() {
    Feed feed = Feed.of(1, 1).row(0, 0, 1, 0);
    for (int k = 1; k < 100; k++) {
      feed.row(10 * k, 12 * k, 0, 0);
    }
    feed.row(1000, NONE, 1, 1).row(1000, 12 * 100, 0, 0);
    for (int k = 101; k < 200; k++) {
      feed.row(10 * k, 12 * k, 0, 0);
    }
    Change c = only(feed);
    assertBracket(c, 990, 1000);
    assertThat(c.place().reading()).isBetween(12 * 99.0, 12 * 100.0);
  }

  /** ... and where nothing else was written for long, one scan before it. */
  @Test
  void afterALongSilenceTheBracketIsOneScan() {
    Feed feed = Feed.of(1, 1).row(0, 0, 1, 0);
    for (int k = 1; k < 100; k++) {
      feed.row(10 * k, 12 * k, 0, 0);
    }
    feed.row(5000, NONE, 1, 1).row(5100, 1200, 0, 0);
    assertBracket(only(feed), 4990, 5000);
  }

  /** A contact column that is read in every tenth row. */
  @Test
  void aSlowlySampledColumnBracketsByItsOwnReadings() {
    Feed feed = Feed.of(1, 0.001);
    for (int ms = 0; ms < 2000; ms++) {
      boolean reads = ms % 10 == 0;
      feed.row(ms, ms * 1e-3, reads ? 1 : 0, reads && ms >= 1005 ? 1 : 0);
    }
    assertBracket(only(feed), 1000, 1010);
  }

  /** Between its readings nothing is known of it: no state settles by not being looked at. */
  @Test
  void aSlowlySampledColumnDoesNotSettleUnread() {
    Feed feed = Feed.of(1, 0.001);
    for (int ms = 0; ms < 2000; ms++) {
      boolean reads = ms % 25 == 0;
      feed.row(ms, ms * 1e-3, reads ? 1 : 0, reads && ms == 1000 ? 1 : 0);
    }
    Trace trace = feed.trace();
    assertThat(trace.changes()).isEmpty();
    assertThat(trace.disturbances()).hasSize(1);
  }

  @Test
  void twoContactsOnOneStampAreTwoChanges() {
    Feed feed = Feed.of(2, 0);
    for (int ms = 0; ms < 100; ms++) {
      feed.row(ms, NONE, 3, ms >= 40 ? 1 : 2);
    }
    assertThat(feed.changes())
        .extracting(Change::channel, Change::to, Change::afterNs)
        .containsExactlyInAnyOrder(
            tuple(0, ContactState.CLOSED, 40 * MS), tuple(1, ContactState.OPEN, 40 * MS));
  }

  /** A latching logger writes a pulse as two rows of one stamp. */
  @Test
  void twoEdgesOfOneContactOnOneStampAreAPulse() {
    Feed feed = Feed.of(1, 0);
    for (int ms = 0; ms < 100; ms++) {
      feed.row(ms, NONE, 1, 0);
      if (ms == 40) {
        feed.row(ms, NONE, 1, 1).row(ms, NONE, 1, 0);
      }
    }
    assertThat(feed.changes()).isEmpty();
    assertThat(feed.trace().disturbances())
        .singleElement()
        .satisfies(d -> assertThat(d.edges()).isEqualTo(2));
  }

  @Test
  void aStampedEdgeIsBracketedByItsResolution() {
    Feed feed = Feed.of(1, 0.001).path(0, 500, 1, t -> t, 1, 0);
    feed.edge(500.25, 0.05, 0, ContactState.CLOSED).path(501, 1000, 1, t -> t, 1, 1);
    Change c = only(feed);
    assertBracket(c, 500.2, 500.25);
    assertThat(c.place().reading()).isCloseTo(0.500225, org.assertj.core.data.Offset.offset(2e-4));
  }

  @Test
  void aChannelFirstHeardOfByAnEdgeWasInTheOtherState() {
    Trace trace = Feed.of(1, 0).edge(100, 0.1, 0, ContactState.OPEN).row(200, NONE, 0, 0).trace();
    assertThat(trace.start()).isEqualTo(new Trace.States(1, 1));
    assertThat(trace.changes()).extracting(Change::to).containsExactly(ContactState.OPEN);
  }

  /** Position rows 100 ms apart must not hide that a stamped state held for 50 ms. */
  @Test
  void stampedEdgesSettleByTheirOwnStamps() {
    Feed feed = Feed.of(1, 0.001);
    for (int k = 0; k < 30; k++) {
      feed.row(100 * k, 0.01 * k, 0, 0);
      if (k == 15) {
        feed.edge(1510, 0.01, 0, ContactState.CLOSED).edge(1560, 0.01, 0, ContactState.OPEN);
      }
    }
    assertThat(feed.changes())
        .extracting(Change::to, Change::afterNs)
        .containsExactly(
            tuple(ContactState.CLOSED, 1510 * MS), tuple(ContactState.OPEN, 1560 * MS));
  }

  /** The state is certain only until the resolution before the next edge. */
  @Test
  void aStampedEdgeEndsTheHoldingItsResolutionEarlier() {
    Feed feed =
        Feed.of(1, 0)
            .edge(100, 1, 0, ContactState.CLOSED)
            .edge(110, 1, 0, ContactState.OPEN)
            .edge(200, 1, 0, ContactState.OPEN);
    assertThat(feed.changes()).isEmpty();
    assertThat(feed.trace().disturbances()).hasSize(1);
  }

  @Test
  void marksLetTimePass() {
    Feed feed = sampled("00001");
    feed.reduction.onMark(900 * MS, Mark.CLOSED_STOP, "closed-stop");
    Trace trace = feed.trace();
    assertThat(trace.marks())
        .singleElement()
        .satisfies(
            m -> {
              assertThat(m.mark()).isEqualTo(Mark.CLOSED_STOP);
              assertThat(m.place().known()).isFalse();
            });
    assertThat(trace.lastNs()).isEqualTo(900 * MS);
  }

  /** All 64 channels change at once and back, opposite states on even and odd ones. */
  @Test
  void sixtyFourChannels() {
    Feed feed = Feed.of(64, 0);
    long odd = 0xAAAA_AAAA_AAAA_AAAAL;
    for (int ms = 0; ms < 300; ms++) {
      feed.row(ms, NONE, -1L, ms >= 100 && ms < 200 ? ~odd : odd);
    }
    Trace trace = feed.trace();
    assertThat(trace.changes()).hasSize(128);
    for (int channel = 0; channel < 64; channel++) {
      int k = channel;
      ContactState first = k % 2 == 0 ? ContactState.CLOSED : ContactState.OPEN;
      assertThat(trace.changes().stream().filter(c -> c.channel() == k).map(Change::to))
          .containsExactly(first, first.other());
    }
    assertThat(trace.start().closed()).isEqualTo(odd);
    assertThat(trace.end().closed()).isEqualTo(odd);
  }

  /** Edges of all channels at every row never settle: one burst each, told when it ends. */
  @Test
  void aStormOfEdgesIsOneBurstAChannel() {
    Feed feed = Feed.of(64, 0);
    for (int ms = 0; ms < 3001; ms++) {
      feed.row(ms, NONE, -1L, ms % 2 == 0 ? 0 : -1L);
    }
    assertThat(feed.trace().disturbances()).isEmpty();
    for (int ms = 3001; ms < 3100; ms++) {
      feed.row(ms, NONE, -1L, 0);
    }
    Trace trace = feed.trace();
    assertThat(trace.changes()).isEmpty();
    assertThat(trace.disturbances())
        .hasSize(64)
        .allSatisfy(
            d -> {
              assertThat(d.edges()).isEqualTo(3000);
              assertThat(d.fromNs()).isEqualTo(MS);
            });
  }

  /** A contact that settles only to change again, for ever: so many are kept, the rest counted. */
  @Test
  void endlessChangesAreBoundedAndCounted() {
    Feed feed = Feed.of(64, 0);
    long changes = 0;
    for (int k = 0; k < 100; k++) {
      feed.row(20 * k, NONE, -1L, k % 2 == 0 ? 0 : -1L);
      changes += k > 0 ? 64 : 0;
      feed.row(20 * k + 10, NONE, -1L, k % 2 == 0 ? 0 : -1L);
    }
    Trace trace = feed.trace();
    assertThat(trace.changes()).hasSize(SpotLog.MOST);
    assertThat(trace.faults())
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.kind()).isEqualTo(ReadingFault.Kind.EVENTS_LEFT_OUT);
              assertThat(f.amount()).isEqualTo(99 * 64 - SpotLog.MOST);
            });
    assertThat(changes).isEqualTo(99 * 64);
  }

  /**
   * Against a plain reference: random settled states with bounces, written densely. Every change is
   * found within its true bracket, in order, and none is invented.
   */
  @Test
  void randomBouncesAgainstWhatWasMade() {
    Rng rng = new Rng(41);
    Feed feed = Feed.of(3, 0);
    java.util.List<String> made = new java.util.ArrayList<>();
    long closed = 0;
    int ms = 0;
    for (int k = 0; k < 400; k++) {
      for (int i = 12 + rng.below(30); i > 0; i--) {
        feed.row(ms++, NONE, 7, closed);
      }
      long bit = 1L << rng.below(3);
      int edges = 1 + rng.below(6);
      made.add(
          edges % 2 == 1
              ? Long.numberOfTrailingZeros(bit) + " at " + ms + " bounces " + (edges - 1)
              : "disturbed");
      for (int e = 0; e < edges; e++) {
        closed ^= bit;
        for (int i = 1 + rng.below(9); i > 0; i--) {
          feed.row(ms++, NONE, 7, closed);
        }
      }
    }
    for (int i = 0; i < 20; i++) {
      feed.row(ms++, NONE, 7, closed);
    }
    Trace trace = feed.trace();
    assertThat(
            trace.changes().stream()
                .map(c -> c.channel() + " at " + c.afterNs() / MS + " bounces " + c.bounces()))
        .containsExactlyElementsOf(made.stream().filter(m -> !m.equals("disturbed")).toList());
    assertThat(trace.disturbances())
        .hasSize((int) made.stream().filter(m -> m.equals("disturbed")).count());
    assertThat(trace.changes()).allSatisfy(c -> assertThat(c.gapNs()).isEqualTo(MS));
    assertThat(trace.end().closed()).isEqualTo(closed);
  }

  private static Change only(Feed feed) {
    assertThat(feed.changes()).hasSize(1);
    return feed.changes().get(0);
  }
}
