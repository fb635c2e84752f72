package tripline.harness.convert;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import tripline.Version;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureEnd;
import tripline.harness.capture.Utf8Text;
import tripline.harness.recording.LoggerNames;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MarkMessage;
import tripline.link.Reports;
import tripline.link.SampleBlock;
import tripline.link.Status;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Writes rows as a capture of a logger that would have sent them. */
final class CaptureTarget implements SampleSink {
  private static final int FRAMES = 1;
  private static final int CLOCK_BITS = 53;
  private static final int LONGEST_BODY = 512;
  private static final long MOST_GAP_MICROS = 0xffff_ffffL;
  private static final int MOST_TEXT = 120;
  private static final int SESSION = 1;

  private final OutputStream out;
  private final CaptureEncoder capture = new CaptureEncoder();
  private final LinkEncoder encoder = new LinkEncoder();
  private final SampleBlock block = new SampleBlock();
  private final byte[] frame = new byte[LinkEncoder.MOST_BYTES];
  private final long baseNs;
  private final long countsPerUnit;
  private boolean open;
  private long blockKnown;
  private long number;
  private long lastMicros;
  private long rows;
  private int marks;

  CaptureTarget(OutputStream out, Facts facts, CaptureBegin begin) throws IOException {
    this.out = out;
    this.baseNs = facts.survey().firstNs();
    this.countsPerUnit = facts.survey().countsPerUnit();
    capture.begin(begin);
    write();
    describe(facts);
  }

  private void describe(Facts facts) {
    int positions = facts.survey().hasPositions() ? 1 : 0;
    say(
        new Identity(
            1,
            0,
            CLOCK_BITS,
            facts.contacts().size(),
            positions,
            FRAMES,
            LONGEST_BODY,
            0,
            SESSION,
            0,
            0,
            LoggerNames.CONVERTED,
            "",
            "tripline " + Version.TEXT));
    if (positions > 0) {
      say(ChannelDescription.position("position", "", 1, countsPerUnit, 0, 0));
    }
    for (int i = 0; i < facts.contacts().size(); i++) {
      say(ChannelDescription.contact(i, facts.contacts().get(i), 1, Reports.SAMPLED, 0, 0));
    }
    status();
  }

  private void status() {
    say(new Status(0, 0, 0, lastMicros, 0, SESSION, 0, number & 0xffff_ffffL, 0, 0, 0, 0));
  }

  private void say(LinkMessage message) {
    int length = encoder.encode(message, Encoding.FRAMES, frame, 0);
    capture.received(Math.max(0, lastMicros), frame, 0, length);
    write();
  }

  private void write() {
    try {
      out.write(capture.bytes(), 0, capture.length());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    long micros = micros(timeNs);
    long gap = micros - lastMicros;
    if (open && (known != blockKnown || gap < 0 || gap > MOST_GAP_MICROS)) {
      endBlock();
    }
    if (!open || !add(reading, closed, gap)) {
      endBlock();
      lastMicros = micros;
      blockKnown = known;
      open = true;
      block.begin(number & 0xffff_ffffL, micros, 0, known);
      if (!add(reading, closed, 0)) {
        throw new IllegalStateException("an empty block takes a row");
      }
    }
    lastMicros = micros;
    number++;
    rows++;
  }

  private boolean add(double reading, long closed, long gap) {
    return Double.isNaN(reading)
        ? block.addWithoutReading(closed, gap)
        : block.add((int) Math.rint(reading * countsPerUnit), closed, gap);
  }

  private void endBlock() {
    if (open) {
      open = false;
      say(block);
    }
  }

  /** Time is kept to the microsecond, as the link has it. */
  private long micros(long timeNs) {
    return Math.floorDiv(timeNs - baseNs + 500, 1000);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new IllegalStateException("a CSV recording has no stamped edges");
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    endBlock();
    lastMicros = micros(timeNs);
    int kind =
        switch (mark) {
          case CLOSED_STOP -> 1;
          case OPEN_STOP -> 2;
          case ADJUSTED -> 3;
          case NOTE -> 4;
        };
    String kept = mark == Mark.NOTE ? Utf8Text.cut(text, MOST_TEXT) : "";
    say(new MarkMessage(kind, 1, marks++ & 0xffff, lastMicros, kept));
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}

  /** The end of the capture. */
  void finish() {
    endBlock();
    status();
    capture.end(Math.max(0, lastMicros), CaptureEnd.Reason.CONVERTED);
    write();
  }

  long rows() {
    return rows;
  }

  long marks() {
    return marks;
  }
}
