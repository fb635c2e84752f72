package tripline.cases;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureEnd;
import tripline.capture.CaptureFormat;
import tripline.capture.HostMark;
import tripline.capture.LineChange;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MarkKind;
import tripline.link.MarkMessage;
import tripline.link.MarkSource;
import tripline.link.Reports;
import tripline.link.SampleBlock;
import tripline.link.Status;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.sample.SampleSink;
import tripline.truth.Rng;

/**
 * Writes rows as the capture a host makes of a logger that sends them: it samples on whatever
 * becomes of the cable, the host keeps what arrives, in the pieces it arrives in, and greets the
 * logger again when the cable is back. The first mark is pressed on the logger, others at the host.
 */
final class CaptureBytes implements SampleSink {
  private static final String PORT = "/dev/ttyACM0";
  private static final long UTC_MICROS = 1_772_439_245_000_000L;
  private static final long SESSION = 0x5eed;
  private static final int ROWS = 25;
  private static final long STATUS_NS = 1_000_000_000L;

  /** The host opened the port so long before the logger's clock began, as the model counts. */
  private static final long OPENED_MICROS = 400_000;

  private final List<String> contacts;
  private final double resolution;
  private final Cable cable;
  private final Rng rng;
  private final CaptureEncoder capture = new CaptureEncoder();
  private final LinkEncoder link = new LinkEncoder();
  private final ByteArrayOutputStream file = new ByteArrayOutputStream();
  private final byte[] said = new byte[LinkEncoder.MOST_BYTES];
  private final SampleBlock block = new SampleBlock();
  private long number;
  private long firstNs = -1;
  private long lastNs;
  private long statusNs;
  private long latestMicros;
  private boolean lineLost;
  private int marks;

  CaptureBytes(CaptureBegin begin, List<String> contacts, double resolution, Cable cable, Rng rng) {
    this.contacts = contacts;
    this.resolution = resolution;
    this.cable = cable;
    this.rng = rng;
    capture.begin(begin);
    keep();
    lineOpened(OPENED_MICROS / 4);
    describe(OPENED_MICROS / 2);
  }

  static CaptureBegin begin(Drive drive, String jobSha256, String tag) {
    return new CaptureBegin(
        CaptureFormat.MAJOR,
        CaptureFormat.MINOR,
        Optional.of(drive),
        Optional.empty(),
        UTC_MICROS,
        jobSha256,
        "tripline 0.1.0",
        PORT,
        tag,
        "job.toml");
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    long micros = timeNs / 1000;
    if (firstNs < 0) {
      firstNs = timeNs;
      block.begin(number, micros, 0, known);
    }
    watchCable(timeNs);
    int count = (int) Math.round(reading / resolution);
    if (block.rows() == ROWS || !block.add(count, closed, micros - lastNs / 1000)) {
      say(timeNs, block);
      block.begin(number, micros, 0, known);
      block.add(count, closed, 0);
    }
    number++;
    lastNs = timeNs;
    if (timeNs >= statusNs) {
      statusNs = timeNs + STATUS_NS;
      say(timeNs, status(1));
    }
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    MarkKind kind =
        switch (mark) {
          case CLOSED_STOP -> MarkKind.CLOSED_STOP;
          case OPEN_STOP -> MarkKind.OPEN_STOP;
          case ADJUSTED -> MarkKind.ADJUSTED;
          case NOTE -> MarkKind.NOTE;
        };
    boolean button = marks == 0;
    if (!button) {
      capture.mark(hostMicros(timeNs), new HostMark(mark, HostMark.Taken.BY_LOGGER, ""));
      keep();
    }
    MarkSource source = button ? MarkSource.BUTTON : MarkSource.HOST;
    say(timeNs, new MarkMessage(kind.code(), source.code(), marks++, timeNs / 1000, ""));
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new UnsupportedOperationException("this logger samples its contacts");
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    throw new UnsupportedOperationException("this logger loses nothing");
  }

  /** Stamp of the first row, s. */
  double firstS() {
    return firstNs * 1e-9;
  }

  /** Tells the logger to stop; the whole file. */
  byte[] end() {
    say(lastNs, block);
    say(lastNs, status(0));
    line(hostMicros(lastNs), LineChange.Event.CLOSED, LineChange.Cause.NONE, "");
    capture.end(hostMicros(lastNs), CaptureEnd.Reason.ASKED);
    keep();
    return file.toByteArray();
  }

  private void watchCable(long timeNs) {
    boolean out = cable.out(timeNs * 1e-9);
    if (out && !lineLost) {
      int length = link.encode(status(1), Encoding.FRAMES, said, 0);
      received(hostMicros(timeNs), 0, length / 2);
      line(hostMicros(timeNs), LineChange.Event.LOST, LineChange.Cause.UNPLUGGED, "unplugged");
    } else if (!out && lineLost) {
      lineOpened(hostMicros(timeNs));
      describe(hostMicros(timeNs));
    }
    lineLost = out;
  }

  private void lineOpened(long hostMicros) {
    line(hostMicros, LineChange.Event.OPENED, LineChange.Cause.NONE, PORT);
  }

  private void line(long hostMicros, LineChange.Event event, LineChange.Cause cause, String words) {
    capture.line(hostMicros, new LineChange(event, cause, UTC_MICROS + hostMicros, words));
    keep();
  }

  /** What it says when it is greeted. */
  private void describe(long hostMicros) {
    send(
        hostMicros,
        new Identity(
            1,
            0,
            53,
            contacts.size(),
            1,
            1,
            512,
            0x5f,
            SESSION,
            1_000,
            1_000_000,
            "bench",
            "0417",
            "2"));
    send(
        hostMicros,
        ChannelDescription.position("position", "turn", 1, Math.round(1 / resolution), 0, 0));
    for (int i = 0; i < contacts.size(); i++) {
      send(hostMicros, ChannelDescription.contact(i, contacts.get(i), 1, Reports.SAMPLED, 0, 0));
    }
    send(hostMicros, status(number == 0 ? 0 : 1));
  }

  private Status status(int state) {
    return new Status(state, 0, 0, lastNs / 1000, 0, SESSION, 0, number, 0, 0, 0, 0);
  }

  private void say(long timeNs, LinkMessage message) {
    send(hostMicros(timeNs), message);
  }

  /** What is said into a cable that is out is said all the same. */
  private void send(long hostMicros, LinkMessage message) {
    int length = link.encode(message, Encoding.FRAMES, said, 0);
    if (lineLost) {
      return;
    }
    int first = rng.chance(0.1) ? 1 + (int) (rng.uniform() * (length - 1)) : length;
    received(hostMicros, 0, first);
    received(hostMicros, first, length - first);
  }

  private void received(long hostMicros, int offset, int length) {
    if (length > 0) {
      capture.received(hostMicros, said, offset, length);
      keep();
    }
  }

  private void keep() {
    file.write(capture.bytes(), 0, capture.length());
  }

  /** The host reads some milliseconds later. */
  private long hostMicros(long timeNs) {
    long micros = OPENED_MICROS + timeNs / 1000 + (long) rng.uniform(1_500, 6_000);
    latestMicros = Math.max(latestMicros + 1, micros);
    return latestMicros;
  }
}
