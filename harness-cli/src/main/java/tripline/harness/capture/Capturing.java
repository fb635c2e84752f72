package tripline.harness.capture;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureEnd;
import tripline.capture.LineChange;
import tripline.harness.capture.Connection.Turn;
import tripline.harness.failure.LinkFailure;
import tripline.harness.host.Incoming;
import tripline.harness.host.NoAnswer;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.Reach;
import tripline.harness.terminal.Press;
import tripline.link.LinkSamples;
import tripline.sample.Channels;

/**
 * Records a logger until it is told to end: keeps what comes, puts the operator's marks in their
 * place, and when the line is lost waits for it and goes on in the same file.
 */
public final class Capturing {
  /** A lost line is tried again this often. */
  static final long TRY_AGAIN_MS = 250;

  private static final long SHOW_NS = 200_000_000L;

  private final CaptureFile file;
  private final Reach reach;
  private final long rateMilliHz;
  private final Panel panel;
  private final LongSupplier nanoTime;
  private final InstantSource utc;
  private final LiveState live = new LiveState();
  private final LinkSamples samples;
  private final Incoming incoming;
  private final Marks marks;
  private final RowRate rate;
  private final Dearth dearth;
  private @Nullable Connection connection;
  private boolean quit;
  private long gaps;
  private long gapMicros;
  private long lostMicros;
  private long shownNs;

  /**
   * @param file new
   * @param reach the way to the logger
   * @param asked channels of the job
   * @param rateMilliHz sampling rate wanted, mHz; 0: the logger's own
   * @param panel the operator
   * @param nanoTime a clock that never steps, ns
   * @param utc the host's clock
   */
  public Capturing(
      CaptureFile file,
      Reach reach,
      Channels asked,
      long rateMilliHz,
      Panel panel,
      LongSupplier nanoTime,
      InstantSource utc) {
    this.file = file;
    this.reach = reach;
    this.rateMilliHz = rateMilliHz;
    this.panel = panel;
    this.nanoTime = nanoTime;
    this.utc = utc;
    this.samples = new LinkSamples(asked, why -> live);
    this.incoming = new Incoming(this::keep, samples);
    this.marks = new Marks(file, samples, panel);
    this.rate = new RowRate(nanoTime.getAsLong());
    this.dearth = new Dearth(nanoTime.getAsLong());
  }

  private void keep(byte[] bytes, int length) {
    file.received(bytes, length);
    samples.hostTime(file.elapsedMicros());
  }

  /** What came from the logger so far. */
  public Incoming incoming() {
    return incoming;
  }

  /**
   * Begins over a line that was just opened.
   *
   * @throws LinkFailure if no logger answers there, or it does not sample; the line is closed then
   */
  public void begin(ByteLine line) {
    Connection first = opened(line);
    try {
      first.prepare(rateMilliHz, Turn.FIRST);
      connection = first;
    } catch (NoAnswer e) {
      first.close();
      throw new LinkFailure(line.name(), e.what());
    } catch (LineGone e) {
      first.close();
      throw new LinkFailure(line.name(), "the line was lost (" + e.what() + ")");
    }
  }

  private Connection opened(ByteLine line) {
    file.line(change(LineChange.Event.OPENED, LineChange.Cause.NONE, line.name()));
    return new Connection(line, incoming, nanoTime, utc);
  }

  private LineChange change(LineChange.Event event, LineChange.Cause cause, String text) {
    return new LineChange(
        event, cause, ChronoUnit.MICROS.between(Instant.EPOCH, utc.instant()), text);
  }

  /**
   * Records until the operator or the end asked for ends it.
   *
   * @throws tripline.harness.failure.OutputFailure if the file cannot be written any more
   */
  public CaptureSummary run(BooleanSupplier end) {
    try {
      while (!quit && !end.getAsBoolean()) {
        Connection present = connection;
        if (present == null) {
          tryAgain();
        } else {
          goOn(present);
        }
        show();
      }
      return finish();
    } finally {
      if (connection != null) {
        connection.close();
      }
    }
  }

  private void goOn(Connection present) {
    try {
      present.line().pump();
      if (present.failed()) {
        lost(present, LineChange.Cause.SILENT, "the logger fell silent");
        return;
      }
      if (dearth.begins(nanoTime.getAsLong(), samples.rows())) {
        panel.say("%s: the logger is there, but no samples come".formatted(present.line().name()));
      }
      for (Press press = panel.pressed(0); press != null; press = panel.pressed(0)) {
        if (press.mark() == null) {
          onOther(press);
        } else {
          marks.pressed(press.mark(), press.text(), present);
        }
      }
    } catch (LineGone e) {
      lost(
          present,
          e.what().equals("unplugged") ? LineChange.Cause.UNPLUGGED : LineChange.Cause.NO_ANSWER,
          e.what());
    }
  }

  private void lost(Connection present, LineChange.Cause cause, String why) {
    present.close();
    connection = null;
    samples.lineLost();
    lostMicros = file.elapsedMicros();
    file.line(change(LineChange.Event.LOST, cause, why));
    gaps++;
    panel.say(
        "%s: the line is lost (%s); all so far is kept, waiting for it"
            .formatted(present.line().name(), why));
  }

  private void tryAgain() {
    @Nullable Press press = panel.pressed(TRY_AGAIN_MS);
    if (press != null && press.mark() != null) {
      marks.pressedAway(press.mark(), press.text());
    } else if (press != null) {
      onOther(press);
    } else {
      lineBack().ifPresent(this::reconnect);
    }
  }

  /** Not yet, as long as it takes: the operator sees that it is waited for. */
  private Optional<ByteLine> lineBack() {
    try {
      return Optional.of(reach.open());
    } catch (LinkFailure notYet) {
      return Optional.empty();
    }
  }

  private void reconnect(ByteLine line) {
    Connection again = opened(line);
    String before = logger();
    try {
      again.prepare(rateMilliHz, Turn.AGAIN);
      connection = again;
      long awayMicros = file.elapsedMicros() - lostMicros;
      gapMicros += awayMicros;
      panel.say("%s: the logger is back after %.1f s".formatted(line.name(), awayMicros * 1e-6));
      if (!logger().equals(before)) {
        panel.say("%s: it is another one: %s, not %s".formatted(line.name(), logger(), before));
      }
    } catch (LineGone | NoAnswer e) {
      again.close();
      samples.lineLost();
      file.line(
          change(
              LineChange.Event.LOST, LineChange.Cause.NO_ANSWER, String.valueOf(e.getMessage())));
    }
  }

  private String logger() {
    var identity = incoming.identity();
    return identity == null ? "" : (identity.model() + " " + identity.serial()).strip();
  }

  private void onOther(Press press) {
    if (press.key() == Press.Key.QUIT) {
      quit = true;
    } else {
      panel.say("no such key; c closed stop, o open stop, a adjusted, n note, q end");
    }
  }

  private void show() {
    long nowNs = nanoTime.getAsLong();
    if (nowNs - shownNs >= SHOW_NS) {
      shownNs = nowNs;
      panel.show(progress());
    }
  }

  private CaptureProgress progress() {
    return new CaptureProgress(
        file.elapsedMicros(),
        connection == null,
        samples.rows(),
        rate.perS(nanoTime.getAsLong(), samples.rows()),
        live.reading(),
        live.known(),
        live.closed(),
        samples.lostOnLink() + samples.lostInLogger(),
        live.marks(),
        gaps);
  }

  /** Ends what was begun and is not wanted; the logger does not go on sampling for nobody. */
  public void abandon() {
    Connection present = connection;
    if (present != null) {
      connection = null;
      stop(present);
      present.close();
    }
  }

  private void stop(Connection present) {
    try {
      present.stop();
    } catch (LineGone | NoAnswer e) {
      panel.say(
          "%s: the logger was not stopped: %s".formatted(present.line().name(), e.getMessage()));
    }
  }

  private CaptureSummary finish() {
    Connection present = connection;
    if (present == null) {
      gapMicros += file.elapsedMicros() - lostMicros;
    } else {
      stop(present);
      file.line(change(LineChange.Event.CLOSED, LineChange.Cause.NONE, ""));
    }
    samples.finish();
    CaptureSummary summary = new CaptureSummary(progress(), gapMicros, file.receivedBytes());
    file.end(CaptureEnd.Reason.ASKED);
    return summary;
  }
}
