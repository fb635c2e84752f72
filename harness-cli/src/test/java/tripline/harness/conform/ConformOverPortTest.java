package tripline.harness.conform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tripline.RequiredProgram;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.LineSource;
import tripline.harness.rehearse.Pace;
import tripline.harness.rehearse.Rehearsal;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ShippedSheets;
import tripline.harness.rehearse.port.PortMaker;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.script.LineReader;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.SerialPorts;
import tripline.link.Encoding;

/**
 * The rehearsal logger examined over a real serial device, pulled out and put back at the end. Time
 * of both sides passes three times as fast, so what is judged by milliseconds is left out here.
 */
@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ConformOverPortTest {
  private static final int SPEED = 3;
  private static final Set<Duty> BY_THE_CLOCK =
      EnumSet.of(Duty.IN_TIME, Duty.GATHER, Duty.PROMPT, Duty.CLOCK, Duty.STATUS, Duty.STAMPS);

  @TempDir private Path folder;

  private static List<ScriptLine> toAndFro() throws BadLine {
    LineReader reader = Rehearsal.reader(ShippedSheets.motor().cams());
    List<String> lines = new ArrayList<>(List.of("await start", "crank to 1 at 5"));
    for (int i = 0; i < 100; i++) {
      lines.add("crank closed 0.9 at 1.5");
      lines.add("crank open 0.9 at 1.5");
    }
    List<ScriptLine> script = new ArrayList<>();
    for (String line : lines) {
      script.add(new ScriptLine(line, reader.read(line).orElseThrow()));
    }
    return script;
  }

  @Test
  void theRehearsalLoggerKeepsItsDutiesOverARealPort() throws Exception {
    RequiredProgram.need("socat", "-V");
    String port = folder.resolve("port").toString();
    PortMaker maker = new PortMaker(Path.of(port), List.of(PortMaker.Holder.SOCAT));
    StringWriter answers = new StringWriter();
    RigPlan plan =
        new RigPlan(ShippedSheets.motor(), Setting.MIS_SET, 1, Kit.FULL, Encoding.FRAMES, 0, 0);
    Rehearsal rehearsal =
        new Rehearsal(
            plan,
            maker,
            Pace.REAL,
            SPEED,
            new PrintWriter(answers),
            new PrintWriter(new StringWriter()));
    List<ScriptLine> script = toAndFro();
    try (PipedWriter keyboard = new PipedWriter();
        PipedReader typed = new PipedReader(keyboard)) {
      LineSource lines = LineSource.of(new BufferedReader(typed), LineSource.When.AT_ONCE);
      CompletableFuture<Void> running =
          CompletableFuture.runAsync(() -> rehearsal.run(List.of(port), script, lines));
      while (!answers.toString().contains("\n") && !running.isDone()) {
        Thread.onSpinWait();
      }
      Report report = examine(port, () -> type(keyboard, "unplug\nrestart\nplug\n"));
      type(keyboard, "quit\n");
      running.get();
      judge(report);
    }
  }

  private static Report examine(String port, Runnable power) {
    return new Conformity(
            port,
            SerialPorts.to(port, BaudRate.USUAL),
            () -> System.nanoTime() * SPEED,
            LockSupport::parkNanos,
            115200 * SPEED)
        .examine(Optional.of(power));
  }

  private static void type(PipedWriter keyboard, String text) {
    try {
      keyboard.write(text);
      keyboard.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void judge(Report report) {
    StringWriter text = new StringWriter();
    ConformText.write(report, new PrintWriter(text));
    for (Report.Line line : report.lines()) {
      if (!BY_THE_CLOCK.contains(line.duty()) && line.duty() != Duty.REPEATS) {
        assertThat(line.outcome()).as(text + line.toString()).isEqualTo(Outcome.HOLDS);
      }
    }
  }
}
