package tripline.harness.capture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import tripline.harness.capture.PtyLogger.Pace;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.SerialPorts;
import tripline.harness.terminal.Press;
import tripline.sample.Channels;

/**
 * Proofs over a real pseudo terminal with the real serial library; each says what it saw and throws
 * where it is not as it must be.
 */
final class PtyProofs {
  /** Nearly all that 115 200 baud carry: see {@link #atLineRate}. */
  private static final long LINE_PERIOD_MICROS = 114;

  private static final int LINE_ROWS = 175;
  private static final Channels CONTACTS = new Channels(List.of("k1", "k2", "k3", "k4"));
  private static final long MOST_OLD_NS = 250_000_000;

  private PtyProofs() {}

  /** An operator who only looks on. */
  private static final class Onlooker implements Panel {
    @Override
    public void say(String text) {}

    @Override
    public void show(CaptureProgress progress) {}

    @Override
    public @Nullable Press pressed(long waitMs) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(waitMs));
      return null;
    }
  }

  /** What a capture in this process came to. */
  record Captured(CaptureSummary summary, Replay replay, double seconds) {}

  private static Captured capture(
      Path folder, SimLogger logger, long periodMicros, Pace pace, Acts acts) throws Exception {
    Path link = folder.resolve("logger");
    Path out = Files.createTempFile(folder, "proof", ".bin");
    Files.delete(out);
    boolean[] end = new boolean[1];
    try (PtyLogger device = new PtyLogger(logger, pace, link);
        CaptureFile file = CaptureFile.create(out, Rig.BEGIN, System::nanoTime)) {
      Capturing capturing =
          new Capturing(
              file,
              SerialPorts.to(link.toString(), BaudRate.USUAL),
              CONTACTS,
              0,
              new Onlooker(),
              System::nanoTime,
              InstantSource.system());
      long startNs = System.nanoTime();
      capturing.begin(SerialPorts.open(link.toString(), BaudRate.USUAL));
      CompletableFuture<Void> script =
          CompletableFuture.runAsync(
              () -> {
                acts.on(device);
                synchronized (end) {
                  end[0] = true;
                }
              });
      CaptureSummary summary =
          capturing.run(
              () -> {
                synchronized (end) {
                  return end[0] || script.isCompletedExceptionally();
                }
              });
      double seconds = (System.nanoTime() - startNs) * 1e-9;
      script.get();
      return new Captured(summary, Replay.of(Files.readAllBytes(out), periodMicros), seconds);
    } finally {
      Files.deleteIfExists(out);
    }
  }

  /** What happens to a device while it is recorded. */
  interface Acts {
    void on(PtyLogger device);
  }

  /**
   * So many seconds of a device's time at nearly the rate of the line, as fast as the pty takes
   * them.
   */
  static String atLineRate(Path folder, long deviceS) throws Exception {
    SimLogger logger = new SimLogger(LINE_PERIOD_MICROS);
    logger.rowsABlock = LINE_ROWS;
    Captured seen =
        capture(
            folder,
            logger,
            LINE_PERIOD_MICROS,
            Pace.FAST,
            device -> device.until(deviceS * 1_000_000).join());
    long rows = seen.replay().rows();
    require(rows == logger.number(), rows + " rows of " + logger.number());
    complete(seen);
    double share = seen.summary().receivedBytes() * 10.0 / deviceS / 115_200;
    require(share > 0.9 && share <= 1.0, "the line is used to " + share);
    return "%d s of the device at %.1f %% of 115200 baud: %d samples, %d bytes, none lost, in %.1f s"
        .formatted(deviceS, 100 * share, rows, seen.summary().receivedBytes(), seen.seconds());
  }

  /** As fast as it goes: received, on disk, decoded. */
  static String throughput(Path folder, long megabytes) throws Exception {
    SimLogger logger = new SimLogger(LINE_PERIOD_MICROS);
    logger.rowsABlock = 440;
    long micros = megabytes * 1_000_000 / 500 * 440 * LINE_PERIOD_MICROS;
    Captured seen =
        capture(
            folder, logger, LINE_PERIOD_MICROS, Pace.FAST, device -> device.until(micros).join());
    require(seen.replay().rows() == logger.number(), "rows");
    complete(seen);
    return "%.1f MB in %.1f s: %.1f MB/s received, kept and decoded"
        .formatted(
            seen.summary().receivedBytes() * 1e-6,
            seen.seconds(),
            seen.summary().receivedBytes() * 1e-6 / seen.seconds());
  }

  private static void complete(Captured seen) {
    require(seen.replay().losses.isEmpty(), "losses " + seen.replay().losses);
    require(seen.replay().decoder.ended(), "no end");
    require(seen.replay().samples.counters().lost() == 0, "messages lost");
    require(seen.replay().samples.counters().damaged() == 0, "damaged");
    require(seen.summary().progress().rows() == seen.replay().rows(), "live and replay differ");
  }

  /** Plugged out and in again so many times during one capture. */
  static String unplugs(Path folder, int times, long seed) throws Exception {
    Random random = new Random(seed);
    SimLogger logger = new SimLogger(1000);
    Captured seen =
        capture(
            folder,
            logger,
            1000,
            Pace.REAL,
            device -> {
              for (int i = 0; i < times; i++) {
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(300L + random.nextInt(700)));
                device.unplug();
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50L + random.nextInt(500)));
                device.plug();
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(900));
              }
            });
    Replay replay = seen.replay();
    long missed = replay.losses.stream().mapToLong(Long::longValue).sum();
    require(replay.samples.gapCount() == times, replay.samples.gapCount() + " gaps marked");
    require(replay.rowsByStretch.size() == 1, replay.rowsByStretch.size() + " stretches");
    require(
        replay.rows() + missed == logger.number(),
        replay.rows() + " rows and " + missed + " missed of " + logger.number());
    require(replay.decoder.ended(), "no end");
    return "%d unplugs: one file, %d gaps marked, %d samples kept, %d missed, %d in all"
        .formatted(times, replay.samples.gapCount(), replay.rows(), missed, logger.number());
  }

  /** {@code record} killed so many times at random moments. */
  static String kills(Path folder, int times, long seed) throws Exception {
    Random random = new Random(seed);
    long oldestMs = 0;
    long rows = 0;
    for (int i = 0; i < times; i++) {
      Path link = folder.resolve("kill" + i);
      Path out = folder.resolve("kill" + i + ".bin");
      SimLogger logger = new SimLogger(1000);
      try (PtyLogger device = new PtyLogger(logger, Pace.REAL, link);
          RecordProcess record = RecordProcess.start(folder, link, out, List.of())) {
        until(() -> device.sentBy(System.nanoTime()) > 0 || !record.isAlive());
        require(record.isAlive(), "record ended: " + record.errors());
        LockSupport.parkNanos(random.nextInt(1_500_000_000));
        long killedNs = System.nanoTime();
        record.kill();
        Replay replay = Replay.of(Files.readAllBytes(out), 1000);
        require(replay.losses.isEmpty(), "losses in kill " + i);
        require(replay.decoder.counters().damaged() == 0, "damage in kill " + i);
        require(replay.decoder.counters().missingBytes() == 0, "missing in kill " + i);
        require(!replay.decoder.ended(), "an end in kill " + i);
        long kept = replay.rows();
        long due = device.sentBy(killedNs - MOST_OLD_NS);
        require(kept >= due, "kill " + i + ": " + kept + " rows kept, " + due + " were due");
        long ageMs = 0;
        while (ageMs < 250 && device.sentBy(killedNs - ageMs * 1_000_000) > kept) {
          ageMs++;
        }
        oldestMs = Math.max(oldestMs, ageMs);
        rows += kept;
      }
      Files.delete(out);
    }
    return "%d kills: every file opens, %d samples kept; the newest kept is at most %d ms older than the kill"
        .formatted(times, rows, oldestMs);
  }

  static void until(BooleanSupplier condition) {
    long startNs = System.nanoTime();
    while (!condition.getAsBoolean()) {
      require(System.nanoTime() - startNs < 60_000_000_000L, "waited in vain");
      LockSupport.parkNanos(1_000_000);
    }
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new IllegalStateException(what);
    }
  }

  static void clear(Path folder) throws IOException {
    try (var left = Files.list(folder)) {
      for (Path each : left.toList()) {
        Files.deleteIfExists(each);
      }
    }
    Files.delete(folder);
  }
}
