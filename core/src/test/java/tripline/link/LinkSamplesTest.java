package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

class LinkSamplesTest {
  private final List<String> log = new ArrayList<>();
  private final LinkEncoder encoder = new LinkEncoder();
  private final SampleSink sink =
      new SampleSink() {
        @Override
        public void onRow(long timeNs, double reading, long known, long closed) {
          log.add("row " + timeNs + " " + reading + " " + known + " " + closed);
        }

        @Override
        public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
          log.add("edge " + timeNs + " ±" + resolutionNs + " " + channel + " " + state);
        }

        @Override
        public void onMark(long timeNs, Mark mark, String text) {
          log.add("mark " + timeNs + " " + mark + " " + text);
        }

        @Override
        public void onLoss(long fromNs, long toNs, long samples) {
          log.add("loss " + fromNs + " " + toNs + " " + samples);
        }
      };
  private final LinkSamples samples =
      new LinkSamples(
          new Channels(List.of("k2", "k1")),
          why -> {
            log.add("begin " + why);
            return sink;
          });
  private final LinkDecoder decoder = new LinkDecoder(samples);

  private void send(LinkMessage... messages) {
    byte[] bytes = Streams.of(Encoding.FRAMES, encoder, messages);
    decoder.accept(bytes, 0, bytes.length);
  }

  private static Identity identity(int clockBits, long session) {
    return new Identity(1, 0, clockBits, 3, 1, 3, 512, 0, session, 1, 1, "", "", "");
  }

  /** k1 closed at level 1, k2 closed at level 0, k3 that no job asks for; 24 counts a turn. */
  private void describe(int clockBits, long session) {
    send(
        identity(clockBits, session),
        ChannelDescription.position("p", "turn", -1, 24, 0, 0),
        ChannelDescription.contact(0, "k1", 1, Reports.BOTH, 0, 1000),
        ChannelDescription.contact(1, "k2", 0, Reports.SAMPLED, 0, 0),
        ChannelDescription.contact(2, "k3", 1, Reports.SAMPLED, 0, 0));
  }

  private static SampleBlock block(long number, long stampMicros, int rows) {
    SampleBlock block = new SampleBlock().begin(number, stampMicros, 1_000_000, 7);
    for (int i = 0; i < rows; i++) {
      block.add(48 + 12 * i, 5, 0);
    }
    return block;
  }

  private static EdgeBlock edge(long number, long stampMicros, int contact, int level) {
    EdgeBlock block = new EdgeBlock().begin(number, stampMicros, 250);
    block.add(0, contact, level);
    return block;
  }

  @Test
  void scalePolarityAndPlaceOfContactsAreApplied() {
    describe(53, 1);
    send(block(0, 1_000, 2));
    assertThat(log).containsExactly("begin FIRST", "row 1000000 -2.0 3 3", "row 2000000 -2.5 3 3");
    assertThat(samples.rows()).isEqualTo(2);
    assertThat(samples.channels()).extracting(ChannelDescription::name).contains("p", "k3");
  }

  @Test
  void aRowWithoutReadingHasNone() {
    describe(53, 1);
    SampleBlock block = new SampleBlock().begin(0, 5, 0, 1);
    block.addWithoutReading(1, 0);
    block.add(24, 0, 7);
    send(block);
    assertThat(log).containsExactly("begin FIRST", "row 5000 NaN 2 2", "row 12000 -1.0 2 0");
  }

  @Test
  void samplesBeforeTheDescriptionAreCountedNotPlaced() {
    send(block(0, 1_000, 3), identity(53, 1), block(3, 4_000, 2));
    assertThat(log).isEmpty();
    assertThat(samples.unplacedRows()).isEqualTo(5);
  }

  @Test
  void edgesAndMarksAreMergedByTime() {
    describe(53, 1);
    send(
        edge(0, 1_500, 0, 0),
        new MarkMessage(1, 1, 0, 2_500, "felt"),
        edge(1, 2_600, 1, 0),
        edge(2, 2_700, 2, 1),
        block(0, 1_000, 3));
    send(new MarkMessage(4, 1, 1, 9_000, "cover off"));
    samples.finish();
    assertThat(log)
        .containsExactly(
            "begin FIRST",
            "row 1000000 -2.0 3 3",
            "edge 1500250 ±1000 1 OPEN",
            "row 2000000 -2.5 3 3",
            "mark 2500000 CLOSED_STOP closed-stop",
            "edge 2600250 ±0 0 CLOSED",
            "row 3000000 -3.0 3 3",
            "mark 9000000 NOTE cover off");
  }

  /** What has a row's very stamp comes before it, wherever in its block the row stands. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void anEdgeWithTheStampOfARowComesBeforeIt(int row) {
    describe(53, 1);
    EdgeBlock edge = new EdgeBlock().begin(0, 1_000L * row, 0);
    edge.add(0, 0, 0);
    send(edge, new MarkMessage(1, 1, 0, 1_000L * row, "felt"), block(0, 1_000, 3));
    List<String> rows =
        List.of("row 1000000 -2.0 3 3", "row 2000000 -2.5 3 3", "row 3000000 -3.0 3 3");
    List<String> expected = new ArrayList<>(rows);
    long ns = 1_000_000L * row;
    expected.addAll(
        row - 1,
        List.of("edge " + ns + " ±1000 1 OPEN", "mark " + ns + " CLOSED_STOP closed-stop"));
    expected.add(0, "begin FIRST");
    assertThat(log).isEqualTo(expected);
    assertThat(samples.lateEvents()).isZero();
  }

  @Test
  void anEdgeThatComesTooLateIsWidenedNotMovedBack() {
    describe(53, 1);
    send(block(0, 1_000, 2), edge(0, 1_500, 0, 0), block(2, 3_000, 1));
    assertThat(log).contains("edge 2000000 ±500750 1 OPEN");
    assertThat(samples.lateEvents()).isEqualTo(1);
  }

  @Test
  void lossesAreReportedOnceWhoeverSawThem() {
    describe(53, 1);
    send(block(0, 0, 2));
    encoder.skip();
    send(block(5, 5_000, 1));
    send(new LossMessage(1, 1, 4, 6, 6_000, 9_000), block(10, 10_000, 1));
    send(edge(0, 11_000, 0, 0), edge(3, 12_000, 0, 1), block(11, 13_000, 1));
    assertThat(log.stream().filter(l -> l.startsWith("loss")))
        .containsExactly(
            "loss 1000000 5000000 3", "loss 5000000 9000000 4", "loss 10000000 12000250 -1");
    assertThat(samples.lostOnLink()).isEqualTo(3);
    assertThat(samples.lostInLogger()).isEqualTo(4);
    assertThat(samples.lostEdges()).isEqualTo(2);
    assertThat(decoder.counters().lost()).isEqualTo(1);
  }

  @Test
  void aNewStartIsNoLoss() {
    describe(53, 1);
    send(block(0, 0, 2), block(0, 9_000, 1));
    assertThat(log).noneMatch(l -> l.startsWith("loss"));
  }

  @Test
  void aClockOf32BitsGoesOnBeyondItsWrap() {
    describe(32, 1);
    long beforeWrap = (1L << 32) - 1_000;
    send(edge(0, beforeWrap + 500, 0, 0), block(0, beforeWrap, 1), block(1, 0, 1));
    assertThat(log)
        .containsExactly(
            "begin FIRST",
            "row 4294966296000 -2.0 3 3",
            "edge 4294966796250 ±1000 1 OPEN",
            "row 4294967296000 -2.0 3 3");
  }

  @Test
  void aNewSessionBeginsAnew() {
    describe(53, 1);
    send(block(0, 50_000, 1));
    describe(53, 2);
    send(block(0, 1_000, 1));
    assertThat(log)
        .containsExactly(
            "begin FIRST", "row 50000000 -2.0 3 3", "begin NEW_SESSION", "row 1000000 -2.0 3 3");
  }

  @Test
  void aClockThatStepsBackBeginsAnew() {
    describe(53, 1);
    send(block(0, 50_000, 2), block(2, 49_000, 1));
    assertThat(log).contains("begin STEP_BACK").last().isEqualTo("row 49000000 -2.0 3 3");
  }

  @Test
  void theSameDescriptionAgainChangesNothing() {
    describe(53, 1);
    send(block(0, 0, 1));
    describe(53, 1);
    send(block(1, 1_000, 1));
    assertThat(log).hasSize(3).noneMatch(l -> l.startsWith("loss"));
  }

  @Test
  void moreEventsThanRoomAreHandedOnEarly() {
    describe(53, 1);
    for (int i = 0; i < 3 * Waiting.ROOM; i++) {
      send(edge(i, 1_000 + i, 0, i & 1));
    }
    samples.finish();
    assertThat(log).hasSize(3 * Waiting.ROOM + 1);
    assertThat(samples.lateEvents()).isZero();
  }

  @Test
  void idleHandsOnWhatWaits() {
    describe(53, 1);
    send(new MarkMessage(2, 1, 0, 2_500, ""));
    send(new Status(0, 0, 0, 3_000, 0, 1, 0, 0, 0, 0, 0, 0));
    assertThat(log).containsExactly("begin FIRST", "mark 2500000 OPEN_STOP open-stop");
  }

  /** What waits can be looked at as if the stream ended, and is still handed on in its turn. */
  @Test
  void waitingEdgesAndMarksCanBeCopied() {
    describe(53, 1);
    send(edge(0, 500, 0, 1));
    assertThat(samples.stretchToBegin()).contains(SinkSource.Break.FIRST);
    samples.copyWaiting(sink);
    assertThat(log).containsExactly("edge 500250 ±1000 1 CLOSED");
    log.clear();
    send(block(0, 1_000, 1), edge(1, 1_500, 0, 0), edge(2, 900, 0, 1));
    assertThat(samples.stretchToBegin()).isEmpty();
    List<String> before = List.copyOf(log);
    samples.copyWaiting(sink);
    List<String> copied = List.copyOf(log.subList(before.size(), log.size()));
    log.subList(before.size(), log.size()).clear();
    samples.finish();
    assertThat(copied).hasSize(2).isEqualTo(log.subList(before.size(), log.size()));
  }

  private static final long WRAP_MICROS = 1L << 32;

  /** Away for minutes or hours: the host's clock counts the wraps of a narrow one. */
  @ParameterizedTest
  @ValueSource(longs = {1, 20, 36, 40, 71, 72, 107, 143, 144, 600, 6_000})
  void theHostsTimeCountsTheWrapsOfANarrowClock(long awayMinutes) {
    long startMicros = WRAP_MICROS - 5_000_000;
    long awayMicros = awayMinutes * 60_000_000;
    describe(32, 1);
    samples.hostTime(1_000_000);
    send(block(0, startMicros, 1));
    samples.lineLost();
    // The two clocks differ by a second, and by another in ten thousand.
    samples.hostTime(1_000_000 + awayMicros + 1_000_000 + awayMicros / 10_000);
    send(block(7, (startMicros + awayMicros) % WRAP_MICROS, 1));
    assertThat(log)
        .containsExactly(
            "begin FIRST",
            "row " + 1000 * startMicros + " -2.0 3 3",
            "loss " + 1000 * startMicros + " " + 1000 * (startMicros + awayMicros) + " 6",
            "row " + 1000 * (startMicros + awayMicros) + " -2.0 3 3");
  }

  /** What comes late, out of the logger's buffer or the host's, never costs a wrap. */
  @Test
  void theHostsTimeMayLagOrRush() {
    describe(32, 1);
    for (long seconds : new long[] {0, 500, 600, 1_500, 1_501, 2_400, 4_000}) {
      samples.hostTime(seconds * 1_000_000);
      send(block(seconds, seconds * 1_000_000 % WRAP_MICROS, 1));
    }
    samples.hostTime(4_000_000_000L + 1_200_000_000L);
    send(block(4_001, 4_001_000_000L, 1));
    assertThat(log)
        .filteredOn(l -> l.startsWith("row"))
        .last()
        .isEqualTo("row 4001000000000 -2.0 3 3");
    assertThat(log).filteredOn(l -> l.startsWith("begin")).hasSize(1);
  }

  @Test
  void whereTheHostsClocksDifferANarrowClockBeginsAStretch() {
    long hour = 3_600_000_000L;
    describe(32, 1);
    samples.hostTime(0);
    send(block(0, 1_000, 1));
    samples.lineLost();
    samples.hostTimeDoubtful(hour / 10);
    send(block(1, 2_000, 1));
    samples.lineLost();
    samples.hostTimeDoubtful(hour);
    send(block(2, 500, 1));
    assertThat(log)
        .containsExactly(
            "begin FIRST",
            "row 1000000 -2.0 3 3",
            "row 2000000 -2.0 3 3",
            "begin TIME_UNKNOWN",
            "row 500000 -2.0 3 3");
    describe(53, 2);
    send(block(0, 1_000, 1));
    samples.hostTimeDoubtful(100 * hour);
    send(block(1, 2_000, 1));
    assertThat(log).endsWith("begin NEW_SESSION", "row 1000000 -2.0 3 3", "row 2000000 -2.0 3 3");
  }
}
