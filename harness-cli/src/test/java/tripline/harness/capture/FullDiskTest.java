package tripline.harness.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tripline.harness.capture.PtyLogger.Pace;

/** The disk is full while a logger is recorded: a process, a logger, a file system. */
@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class FullDiskTest {
  private static final int ROOM_KB = 512;
  private static final int NOT_WRITTEN = 6;

  @TempDir private Path folder;

  @Test
  void isOneClearLineAndAFileThatHoldsAllBefore() throws Exception {
    Path link = folder.resolve("port");
    try (SmallDisk disk = SmallDisk.of(folder.resolve("disk"), ROOM_KB)) {
      Path out = disk.place().resolve("out.bin");
      Path errors = folder.resolve("out.bin.err");
      try (PtyLogger device = new PtyLogger(new SimLogger(1000), Pace.FAST, link)) {
        CompletableFuture<Void> anHour = device.until(3_600_000_000L);
        try (RecordProcess record = RecordProcess.start(folder, link, out, List.of())) {
          assertThat(record.status()).as(record.errors()).isEqualTo(NOT_WRITTEN);
          assertThat(record.answers()).isEmpty();
        }
        assertThat(anHour).isNotDone();
      }
      List<String> said = Files.readAllLines(errors);
      assertThat(said)
          .last()
          .asString()
          .matches("(tripline: )?" + out + ": the disk is full; all up to \\d+\\.\\d s is kept");
      assertThat(said).filteredOn(l -> l.contains("full") || l.contains("Exception")).hasSize(1);
      byte[] kept = Files.readAllBytes(out);
      assertThat(kept.length).isBetween((ROOM_KB - 8) * 1024, ROOM_KB * 1024);
      Replay replay = Replay.of(kept, 1000);
      assertThat(replay.decoder.ended()).isFalse();
      assertThat(replay.decoder.counters().damaged()).isZero();
      assertThat(replay.decoder.counters().missingBytes()).isZero();
      assertThat(replay.losses).isEmpty();
      assertThat(replay.rows()).isGreaterThan(50_000);
      opens(out);
    }
  }

  /** The command that judges a recording takes it as it is. */
  private void opens(Path out) throws Exception {
    String[] words = {"check", RecordProcess.sheet(folder).toString(), out.toString()};
    Process check =
        new ProcessBuilder(RecordProcess.java(List.of(), words)).redirectErrorStream(true).start();
    String said = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(check.waitFor()).as(said).isIn(0, 1, 3);
    assertThat(said).contains("was cut off after", "BACKOFF");
  }
}
