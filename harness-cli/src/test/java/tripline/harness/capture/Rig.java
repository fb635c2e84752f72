package tripline.harness.capture;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureBegin;
import tripline.harness.failure.LinkFailure;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.Reach;
import tripline.harness.terminal.Press;
import tripline.sample.Channels;

/**
 * A capture with nothing real about it: clock, line, logger, operator and disk are here. The clock
 * moves on where somebody would wait. Things happen at times given beforehand.
 */
final class Rig implements Panel, Reach, Disk {
  static final long PERIOD_MICROS = 1000;
  static final CaptureBegin BEGIN =
      new CaptureBegin(
          1,
          0,
          Optional.empty(),
          Optional.empty(),
          1_000_000,
          "00".repeat(32),
          "test",
          "rig",
          "CW-114",
          "job.toml");

  final SimLogger logger = new SimLogger(PERIOD_MICROS);
  final List<String> said = new ArrayList<>();
  final ByteArrayOutputStream disk = new ByteArrayOutputStream();
  long diskRoom = Long.MAX_VALUE;
  long rate;
  boolean plugged = true;
  boolean frozen;
  long nowNs;
  private final TreeMap<Long, Runnable> agenda = new TreeMap<>();
  private final Deque<Press> presses = new ArrayDeque<>();
  private @Nullable CaptureProgress last;
  private long endMs = 3_600_000;
  @Nullable Capturing capturing;

  /** Does something at this time, ms. */
  Rig at(long ms, Runnable what) {
    agenda.merge(
        ms * 1_000_000,
        what,
        (one, other) ->
            () -> {
              one.run();
              other.run();
            });
    return this;
  }

  Rig press(long ms, Press.Key key, String text) {
    return at(ms, () -> presses.add(new Press(key, text)));
  }

  Rig unplug(long ms, long forMs) {
    at(ms, () -> plugged = false);
    return at(ms + forMs, () -> plugged = true);
  }

  Rig end(long ms) {
    endMs = ms;
    return this;
  }

  CaptureSummary run() {
    return begun().run(() -> nowNs >= endMs * 1_000_000);
  }

  /** A capture whose logger samples. */
  Capturing begun() {
    CaptureFile file = CaptureFile.on(this, BEGIN, () -> nowNs);
    Capturing one =
        new Capturing(
            file,
            this,
            new Channels(List.of("k1", "k2", "k3", "k4")),
            rate,
            this,
            () -> nowNs,
            () -> Instant.EPOCH.plusNanos(nowNs));
    capturing = one;
    one.begin(open());
    return one;
  }

  Replay replay() {
    return Replay.of(disk.toByteArray(), PERIOD_MICROS);
  }

  @Nullable CaptureProgress progress() {
    return last;
  }

  private void pass(long ns) {
    long untilNs = nowNs + ns;
    while (!agenda.isEmpty() && agenda.firstKey() <= untilNs) {
      nowNs = Math.max(nowNs, agenda.firstKey());
      logger.passTo(nowNs / 1000);
      agenda.pollFirstEntry().getValue().run();
    }
    nowNs = untilNs;
    logger.passTo(nowNs / 1000);
    if (!plugged || frozen) {
      // Said into the air: its sequence and numbers go on.
      logger.take();
    }
  }

  @Override
  public ByteLine open() {
    if (!plugged) {
      throw new LinkFailure("rig", "no such port");
    }
    return new RigLine();
  }

  /** One plugging in: once unplugged it never comes back. */
  private final class RigLine implements ByteLine {
    private boolean gone;

    @Override
    public String name() {
      return "rig";
    }

    @Override
    public int read(byte[] into) throws LineGone {
      pass(logger.hasSomethingToSay() ? 1_000_000 : 10_000_000);
      gone |= !plugged;
      if (gone) {
        throw new LineGone("rig", "unplugged");
      }
      byte[] said = logger.take();
      System.arraycopy(said, 0, into, 0, said.length);
      return said.length;
    }

    @Override
    public void write(byte[] bytes, int length) throws LineGone {
      if (gone || !plugged) {
        throw new LineGone("rig", "unplugged");
      }
      if (!frozen) {
        logger.hear(bytes, length);
      }
    }

    @Override
    public void close() {
      gone = true;
    }
  }

  @Override
  public void say(String text) {
    said.add(text);
  }

  @Override
  public void show(CaptureProgress progress) {
    last = progress;
  }

  @Override
  public @Nullable Press pressed(long waitMs) {
    if (presses.isEmpty()) {
      pass(waitMs * 1_000_000);
    }
    return presses.poll();
  }

  @Override
  public void write(byte[] bytes, int length) throws IOException {
    int room = (int) Math.min(length, diskRoom - disk.size());
    disk.write(bytes, 0, room);
    if (room < length) {
      throw new IOException("No space left on device");
    }
  }

  @Override
  public void force() {}

  @Override
  public void close() {}
}
