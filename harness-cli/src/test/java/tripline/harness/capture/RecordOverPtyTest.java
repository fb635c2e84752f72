package tripline.harness.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.harness.capture.PtyLogger.Pace;

/** The proofs of {@link LinkStudy}, shorter, and the process as its user meets it. */
@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RecordOverPtyTest {
  @TempDir private Path folder;

  @Test
  void nothingIsLostAtTheRateOfTheLine() throws Exception {
    assertThat(PtyProofs.atLineRate(folder, 30)).contains("none lost");
  }

  @Test
  void unplugsAreGapsInOneFile() throws Exception {
    assertThat(PtyProofs.unplugs(folder, 3, 1)).contains("3 gaps marked");
  }

  @Test
  void killsCostAtMostAQuarterOfASecond() throws Exception {
    assertThat(PtyProofs.kills(folder, 2, 1)).startsWith("2 kills");
  }

  /** Whoever starts the tests may have told their children to ignore some of these signals. */
  private static final List<String> HEEDED = List.of("env", "--default-signal=INT,TERM,HUP");

  /**
   * Two at once are one: whoever stops a process and its group sends two, and a closed terminal.
   */
  @ParameterizedTest
  @ValueSource(strings = {"INT", "TERM", "HUP", "TERM HUP"})
  void aSignalEndsItCleanly(String signals) throws Exception {
    Path link = folder.resolve("port");
    Path out = folder.resolve("out.bin");
    SimLogger logger = new SimLogger(1000);
    try (PtyLogger device = new PtyLogger(logger, Pace.REAL, link);
        RecordProcess record = RecordProcess.start(folder, link, out, HEEDED)) {
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 300 || !record.isAlive());
      assertThat(record.signal(signals.split(" "))).as(record.errors()).isZero();
      assertThat(record.answers())
          .startsWith(out + ": 0:0")
          .contains(" samples, 0 lost, 0 marks, line never lost")
          .hasLineCount(1);
    }
    Replay replay = Replay.of(Files.readAllBytes(out), 1000);
    assertThat(replay.decoder.ended()).isTrue();
    assertThat(replay.rows()).isEqualTo(logger.number());
    assertThat(logger.heard).last().isEqualTo("stop");
  }

  @Test
  void aClosedTerminalEndsItAfterAReconnectToo() throws Exception {
    Path link = folder.resolve("port");
    Path out = folder.resolve("out.bin");
    try (PtyLogger device = new PtyLogger(new SimLogger(1000), Pace.REAL, link);
        RecordProcess record = RecordProcess.start(folder, link, out, HEEDED)) {
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 300 || !record.isAlive());
      device.unplug();
      PtyProofs.until(() -> record.said("the line is lost") || !record.isAlive());
      device.plug();
      PtyProofs.until(() -> record.said("the logger is back") || !record.isAlive());
      assertThat(record.signal("HUP")).as(record.errors()).isZero();
      assertThat(record.answers()).contains("line lost 1 times");
    }
    assertThat(Replay.of(Files.readAllBytes(out), 1000).decoder.ended()).isTrue();
  }

  /** As {@code nohup} starts it. */
  @Test
  void whoeverIgnoredTheClosingOfTheTerminalIsLeftAlone() throws Exception {
    Path link = folder.resolve("port");
    Path out = folder.resolve("out.bin");
    List<String> nohup = List.of("env", "--default-signal=INT,TERM", "--ignore-signal=HUP");
    try (PtyLogger device = new PtyLogger(new SimLogger(1000), Pace.REAL, link);
        RecordProcess record = RecordProcess.start(folder, link, out, nohup)) {
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 300 || !record.isAlive());
      record.send("HUP");
      long sent = device.sentBy(System.nanoTime());
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > sent + 500 || !record.isAlive());
      assertThat(record.isAlive()).as(record.errors()).isTrue();
      assertThat(record.signal("TERM")).as(record.errors()).isZero();
    }
    assertThat(Replay.of(Files.readAllBytes(out), 1000).rows()).isGreaterThan(800);
  }
}
