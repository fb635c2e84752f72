package tripline.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.Reports;
import tripline.link.SampleBlock;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** A logger whose clock wraps after 71 min 35 s, and a cable that was out for long. */
class NarrowClockTest {
  private static final long MINUTE = 60_000_000;
  private static final long WRAP = 1L << 32;
  private static final long UTC = 1_772_439_245_000_000L;

  private final CaptureEncoder capture = new CaptureEncoder();
  private final LinkEncoder link = new LinkEncoder();
  private final ByteArrayOutputStream file = new ByteArrayOutputStream();
  private final List<String> log = new ArrayList<>();

  private void keep() {
    file.write(capture.bytes(), 0, capture.length());
  }

  private void receive(long atMicros, LinkMessage message) {
    byte[] bytes = new byte[LinkEncoder.MOST_BYTES];
    capture.received(atMicros, bytes, 0, link.encode(message, Encoding.FRAMES, bytes, 0));
    keep();
  }

  private void line(long atMicros, long utcMicros, LineChange.Event event) {
    capture.line(atMicros, new LineChange(event, LineChange.Cause.NONE, utcMicros, ""));
    keep();
  }

  private void row(long atMicros, long number, long stampMicros) {
    SampleBlock block = new SampleBlock().begin(number, stampMicros % WRAP, 0, 1);
    block.add(0, 1, 0);
    receive(atMicros, block);
  }

  /** A row at a stamp, the cable out, a row when it is back. */
  private List<String> rows(long stampMicros, long awayByClock, long awayByUtc, long trulyAway) {
    capture.begin(
        new CaptureBegin(
            1, 0, Optional.empty(), Optional.empty(), UTC, "00".repeat(32), "", "", "", ""));
    keep();
    line(0, UTC, LineChange.Event.OPENED);
    receive(0, new Identity(1, 0, 32, 1, 1, 1, 512, 0, 5, 1, 1, "", "", ""));
    receive(0, ChannelDescription.position("p", "turn", 1, 1, 0, 0));
    receive(0, ChannelDescription.contact(0, "k1", 1, Reports.SAMPLED, 0, 0));
    row(0, 0, stampMicros);
    line(MINUTE, UTC + MINUTE, LineChange.Event.LOST);
    line(awayByClock, UTC + awayByUtc, LineChange.Event.OPENED);
    row(awayByClock, 1, stampMicros + trulyAway);
    CaptureSamples samples =
        new CaptureSamples(
            new Channels(List.of("k1")),
            why -> {
              log.add("begin " + why);
              return new Rows();
            });
    CaptureDecoder decoder = new CaptureDecoder(samples);
    decoder.accept(file.toByteArray(), 0, file.size());
    decoder.finish();
    samples.finish(decoder.counters().lastMicros());
    return log;
  }

  private final class Rows implements SampleSink {
    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      log.add("row " + timeNs / 1000);
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {}

    @Override
    public void onMark(long timeNs, Mark mark, String text) {}

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {}
  }

  @Test
  void theTimesOfTheRecordsTellHowOftenItWrapped() {
    long away = 40 * MINUTE;
    assertThat(rows(WRAP - MINUTE, away, away, away - 200_000))
        .containsExactly(
            "begin FIRST", "row " + (WRAP - MINUTE), "row " + (WRAP + 39 * MINUTE - 200_000));
  }

  @Test
  void itMayHaveWrappedSeveralTimes() {
    long away = 400 * MINUTE;
    assertThat(rows(7, away, away, away + 900_000))
        .containsExactly("begin FIRST", "row 7", "row " + (away + 900_007));
  }

  /** The lid was closed over lunch: one clock of the host stood still, the other went on. */
  @Test
  void whereTheHostsClocksDifferTheTimeIsNotKnown() {
    assertThat(rows(7, 2 * MINUTE, 62 * MINUTE, 62 * MINUTE))
        .containsExactly("begin FIRST", "row 7", "begin TIME_UNKNOWN", "row " + (62 * MINUTE + 7));
  }
}
