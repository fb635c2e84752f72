package tripline.harness.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 30, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ProgressLineTest {
  /** A terminal's memory of one line: what a carriage return and blanks leave of it. */
  private static String line(String written) {
    StringBuilder line = new StringBuilder();
    int column = 0;
    for (char c : written.substring(written.lastIndexOf('\n') + 1).toCharArray()) {
      if (c == '\r') {
        column = 0;
      } else {
        line.setLength(Math.max(line.length(), column + 1));
        line.setCharAt(column++, c);
      }
    }
    return line.toString().stripTrailing();
  }

  private static void await(BooleanSupplier condition) {
    while (!condition.getAsBoolean()) {
      Thread.onSpinWait();
    }
  }

  @Test
  void overwritesWhatItShowedAndLeavesNothingOfIt() {
    StringWriter out = new StringWriter();
    try (ProgressLine progress = ProgressLine.on(new PrintWriter(out), 80)) {
      progress.show("0:01.0  a long line of progress");
      await(() -> line(out.toString()).equals("0:01.0  a long line of progress"));
      progress.show("0:02.0  short");
      await(() -> line(out.toString()).equals("0:02.0  short"));
    }
    assertThat(line(out.toString())).isEmpty();
    assertThat(out.toString()).doesNotContain("\n");
  }

  @Test
  void whatIsSaidStaysAboveTheProgress() {
    StringWriter out = new StringWriter();
    try (ProgressLine progress = ProgressLine.on(new PrintWriter(out), 80)) {
      progress.show("0:01.0");
      await(() -> line(out.toString()).equals("0:01.0"));
      progress.say("closed-stop marked at 1.0 s");
      await(
          () ->
              out.toString().contains("marked at 1.0 s") && line(out.toString()).equals("0:01.0"));
    }
    String[] lines = out.toString().split(System.lineSeparator(), -1);
    assertThat(lines).hasSize(2);
    assertThat(line(lines[0])).isEqualTo("closed-stop marked at 1.0 s");
  }

  /** A line that filled the last column would wrap, and never be overwritten. */
  @Test
  void neverReachesTheLastColumn() {
    StringWriter out = new StringWriter();
    try (ProgressLine progress = ProgressLine.on(new PrintWriter(out), 20)) {
      progress.show("x".repeat(300));
      await(() -> line(out.toString()).length() == 19);
    }
  }

  @Test
  void whatWasSaidBeforeTheEndIsSaid() {
    StringWriter out = new StringWriter();
    ProgressLine progress = ProgressLine.on(new PrintWriter(out), 80);
    for (int i = 0; i < 100; i++) {
      progress.say("line " + i);
    }
    progress.close();
    assertThat(out.toString()).contains("line 0", "line 99");
  }

  @Test
  void withoutATerminalOnlyWhatStaysIsWritten() {
    StringWriter out = new StringWriter();
    try (ProgressLine progress = ProgressLine.ofProcess(new PrintWriter(out))) {
      progress.show("0:01.0  1000 samples");
      progress.say("/dev/x: the line is lost");
    }
    assertThat(out.toString()).isEqualTo("/dev/x: the line is lost" + System.lineSeparator());
  }

  /** Ctrl-S, or text being selected: whoever records must not wait for it. */
  @Test
  void aTerminalThatIsHeldHoldsUpNobody() {
    CountDownLatch held = new CountDownLatch(1);
    Writer stuck =
        new Writer() {
          @Override
          public void write(char[] text, int offset, int length) {
            try {
              held.await();
            } catch (InterruptedException e) {
              Thread.currentThread().interrupt();
            }
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    ProgressLine progress = ProgressLine.on(new PrintWriter(stuck), 80);
    long startNs = System.nanoTime();
    for (int i = 0; i < 100_000; i++) {
      progress.show("at " + i);
      progress.say("line " + i);
    }
    progress.close();
    assertThat(System.nanoTime() - startNs).isLessThan(10_000_000_000L);
    held.countDown();
  }
}
