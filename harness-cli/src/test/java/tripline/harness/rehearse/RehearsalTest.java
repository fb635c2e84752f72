package tripline.harness.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tripline.RequiredProgram;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.LinkFailure;
import tripline.harness.host.ByteKeeper;
import tripline.harness.host.Greeting;
import tripline.harness.host.Incoming;
import tripline.harness.host.LoggerLine;
import tripline.harness.host.NoAnswer;
import tripline.harness.rehearse.port.PortMaker;
import tripline.harness.rehearse.port.VirtualPort;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.script.LineReader;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.SerialPorts;
import tripline.link.Encoding;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Stop;

@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RehearsalTest {
  private static final RigPlan PLAN =
      new RigPlan(ShippedSheets.motor(), Setting.MIS_SET, 1, Kit.FULL, Encoding.FRAMES, 0, 0);

  private final StringWriter answers = new StringWriter();
  private final StringWriter notes = new StringWriter();
  @TempDir private Path folder;

  /** Real time that passes only while somebody waits for it. */
  private static final class Waited implements Pace {
    private long nowNs;

    @Override
    public long nanoTime() {
      return nowNs;
    }

    @Override
    public void pause(long durationNs) {
      nowNs += durationNs;
    }
  }

  /** A port nobody has opened. */
  private static final class Unopened implements VirtualPort {
    private long written;
    private boolean closed;
    private boolean held = true;

    @Override
    public String name() {
      return "unopened";
    }

    @Override
    public int read(byte[] into) {
      return 0;
    }

    @Override
    public int room() {
      return 1000;
    }

    @Override
    public void write(byte[] bytes, int length) {
      written += length;
    }

    @Override
    public boolean alive() {
      return held;
    }

    @Override
    public void close() {
      closed = true;
    }
  }

  private Rehearsal rehearsal(VirtualPort.Maker ports, Pace pace, double speed) {
    return new Rehearsal(
        PLAN, ports, pace, speed, new PrintWriter(answers), new PrintWriter(notes, true));
  }

  private static List<ScriptLine> script(String... lines) throws BadLine {
    LineReader reader = Rehearsal.reader(PLAN.sheet().cams());
    List<ScriptLine> script = new ArrayList<>();
    for (String line : lines) {
      script.add(new ScriptLine(line, reader.read(line).orElseThrow()));
    }
    return script;
  }

  private static BufferedReader lines(String text) {
    return new BufferedReader(new StringReader(text));
  }

  @Test
  void aScriptIsDoneToItsEndAndTheRehearsalEnds() throws BadLine {
    List<Unopened> ports = new ArrayList<>();
    VirtualPort.Maker maker =
        () -> {
          ports.add(new Unopened());
          return ports.get(ports.size() - 1);
        };
    rehearsal(maker, new Waited(), 10)
        .run(
            List.of("/dev/made-up", "a greeting"),
            script("touch closed", "unplug", "wait 1", "plug", "truth", "crank open 1"),
            LineSource.none());
    assertThat(ports).hasSize(2).allMatch(p -> p.closed).allMatch(p -> p.written > 500);
    assertThat(answers.toString().lines()).startsWith("/dev/made-up", "a greeting");
    assertThat(answers.toString()).contains("span 9.9915", "cam close trips");
    assertThat(notes.toString().lines().map(l -> l.replaceAll("^ *[0-9.]+ s {2}", "")))
        .contains("touch closed", "unplug", "crank open 1")
        .filteredOn(l -> l.contains("handwheel"))
        .hasSize(2);
  }

  @Test
  void linesOfAProgramAreDoneInTurnAndAWrongOneEndsIt() {
    LineSource source =
        LineSource.of(lines("touch closed\n\nwhere\nfly\n"), LineSource.When.IN_TURN);
    assertThatThrownBy(
            () -> rehearsal(Unopened::new, Pace.REAL, 100).run(List.of("port"), List.of(), source))
        .isInstanceOf(InputFailure.class)
        .hasMessage("standard input:4: \"fly\" is no word of this, try help");
  }

  @Test
  void whatIsTypedIsDoneAtOnceAndAWrongLineOnlySaid() {
    LineSource source =
        LineSource.of(lines("touch closed\nfly\nwhere\nquit\n"), LineSource.When.AT_ONCE);
    rehearsal(Unopened::new, Pace.REAL, 1).run(List.of("port"), List.of(), source);
    assertThat(notes.toString()).contains("no word of this");
    // Mid-travel still, where it stood at 5.9: the hand had hardly begun to turn.
    assertThat(answers.toString().lines().toList().get(1)).startsWith("at 5.");
  }

  @Test
  void aPortThatGoesByItselfIsALinkFailure() throws BadLine {
    Unopened port = new Unopened();
    port.held = false;
    List<ScriptLine> script = script("wait 1");
    assertThatThrownBy(
            () ->
                rehearsal(() -> port, new Waited(), 1)
                    .run(List.of("port"), script, LineSource.none()))
        .isInstanceOf(LinkFailure.class)
        .hasMessage("unopened: went away: the program that holds it has ended");
    assertThat(port.closed).isTrue();
  }

  @Test
  void aKeyboardThatBreaksEndsIt() {
    Reader broken =
        new Reader() {
          @Override
          public int read(char[] into, int from, int length) throws IOException {
            throw new IOException("hung up");
          }

          @Override
          public void close() {}
        };
    rehearsal(Unopened::new, Pace.REAL, 1)
        .run(
            List.of("port"),
            List.of(),
            LineSource.of(new BufferedReader(broken), LineSource.When.AT_ONCE));
    assertThat(answers.toString()).startsWith("port");
  }

  /** The real thing: a serial device, the serial library, the host's side of the link. */
  @Test
  void aHostTalksToItOverARealSerialDevice() throws Exception {
    RequiredProgram.need("socat", "-V");
    Path link = folder.resolve("port");
    PortMaker maker = new PortMaker(link, List.of(PortMaker.Holder.SOCAT));
    List<ScriptLine> script =
        script("await start", "touch closed", "press closed-stop", "await stop", "wait 1");
    CompletableFuture<Void> rehearsal =
        CompletableFuture.runAsync(
            () ->
                rehearsal(maker, Pace.REAL, 20)
                    .run(List.of(link.toString()), script, LineSource.none()));
    while (!answers.toString().contains("\n") && !rehearsal.isDone()) {
      Thread.onSpinWait();
    }
    Incoming incoming = new Incoming(ByteKeeper.NONE, (type, body, length) -> {});
    try (LoggerLine line =
        new LoggerLine(
            SerialPorts.open(link.toString(), BaudRate.USUAL), incoming, System::nanoTime)) {
      greetedAndRecorded(line, incoming);
    }
    rehearsal.get();
    assertThat(notes.toString()).contains("press closed-stop");
    assertThat(link).doesNotExist();
  }

  private void greetedAndRecorded(LoggerLine line, Incoming incoming) throws LineGone, NoAnswer {
    assertThat(Greeting.over(line)).isEqualTo(Greeting.Partner.ANSWERS);
    assertThat(incoming.channels()).hasSize(1 + PLAN.sheet().channels().size());
    assertThat(line.ask(new Start(1_000_000, 20)).result()).isEqualTo(Result.DONE);
    while (!notes.toString().contains("press closed-stop")) {
      line.pump();
    }
    assertThat(line.ask(new Stop()).result()).isEqualTo(Result.DONE);
    assertThat(incoming.counters().damaged() + incoming.counters().lost()).isZero();
    assertThat(incoming.status()).isNotNull();
    assertThat(incoming.status().samples()).isGreaterThan(10_000);
  }
}
