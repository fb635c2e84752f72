package tripline.harness.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.harness.capture.PtyLogger.Pace;

/** The live view as its user meets it: a process, a terminal, a logger on a serial device. */
@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WatchOverPtyTest {
  private static final String ENTERED = "\u001b[?1049h";
  private static final String LEFT = "\u001b[?1049l";
  private static final int UNDECIDED = 3;

  @TempDir private Path folder;
  private final SimLogger logger = new SimLogger(1000);

  private WatchProcess watch(Path link, String... more) throws Exception {
    String[] words = new String[more.length + 3];
    System.arraycopy(more, 0, words, 0, more.length);
    words[more.length] = "--port";
    words[more.length + 1] = link.toString();
    words[more.length + 2] = RecordProcess.sheet(folder).toString();
    return new WatchProcess(folder, words);
  }

  private static void untilShown(WatchProcess watch, String what) {
    PtyProofs.until(() -> watch.shown().contains(what) || !watch.isAlive());
  }

  @Test
  void keysSetMarksAndEndItWithTheAnswer() throws Exception {
    Path link = folder.resolve("port");
    Path out = folder.resolve("out.bin");
    try (PtyLogger device = new PtyLogger(logger, Pace.REAL, link);
        WatchProcess watch = watch(link, "--capture", out.toString())) {
      untilShown(watch, "FIND A STOP");
      untilShown(watch, "21-22");
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 500);
      watch.press("x");
      untilShown(watch, "no such key");
      watch.press("nloose wire");
      untilShown(watch, "note: loose wire_");
      watch.press("\r");
      untilShown(watch, "note marked");
      watch.press("c");
      untilShown(watch, "closed-stop marked");
      watch.press("q");
      assertThat(watch.status()).as(watch.errors()).isEqualTo(UNDECIDED);
      PtyProofs.until(() -> watch.shown().contains("local codes govern."));
      assertThat(watch.shown()).containsSubsequence(ENTERED, LEFT, "UNDECIDED", "BACKOFF");
      assertThat(watch.terminalIsAsBefore()).isTrue();
    }
    Replay replay = Replay.of(Files.readAllBytes(out), 1000);
    assertThat(replay.decoder.ended()).isTrue();
    assertThat(replay.rows()).isEqualTo(logger.number());
    assertThat(logger.heard).contains("place").last().isEqualTo("stop");
  }

  @ParameterizedTest
  @ValueSource(strings = {"INT", "HUP"})
  void aSignalEndsItAndGivesTheTerminalBack(String signal) throws Exception {
    Path link = folder.resolve("port");
    try (PtyLogger device = new PtyLogger(logger, Pace.REAL, link);
        WatchProcess watch = watch(link)) {
      untilShown(watch, "FIND A STOP");
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 500);
      assertThat(watch.terminalIsAsBefore()).isFalse();
      watch.send(signal);
      assertThat(watch.status()).as(watch.errors()).isEqualTo(UNDECIDED);
      assertThat(watch.terminalIsAsBefore()).isTrue();
      assertThat(logger.heard).last().isEqualTo("stop");
    }
  }

  /** The logger takes its time to stop, and whoever asked has lost patience. */
  @Test
  void aSecondSignalEndsItAtOnceAndGivesTheTerminalBackAllTheSame() throws Exception {
    Path link = folder.resolve("port");
    try (PtyLogger device = new PtyLogger(logger, Pace.REAL, link);
        WatchProcess watch = watch(link)) {
      untilShown(watch, "FIND A STOP");
      PtyProofs.until(() -> device.sentBy(System.nanoTime()) > 500);
      device.tell(told -> told.deaf = true);
      watch.send("INT");
      untilShown(watch, LEFT);
      assertThat(watch.isAlive()).as(watch.errors()).isTrue();
      // The first of these may still count as the same request.
      while (watch.isAlive()) {
        watch.send("INT");
      }
      assertThat(watch.status()).isEqualTo(130);
      assertThat(watch.terminalIsAsBefore()).isTrue();
    }
  }
}
