package tripline.harness.watch;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureFormat;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.LiveCapture;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ScriptedRig;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.report.Glyphs;
import tripline.harness.terminal.TerminalSize;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Start;
import tripline.link.Talk;
import tripline.live.LiveAnswer;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** What a redraw and an explanation cost as a session grows long. */
final class WatchEndurance {
  /** Costs at one moment: of a redraw, and of an explanation with the copy it is made from. */
  record Cost(
      double minutes,
      int changes,
      double redrawMicros,
      long redrawBytes,
      double copyMillis,
      double explainMillis) {}

  private static final int REDRAWS = 50;

  private final JobFile job;
  private final LiveCapture live;
  private final CaptureEncoder encoder = new CaptureEncoder();
  private final ScriptedRig bench;
  private final Screen screen =
      new Screen(OutputStream.nullOutputStream(), StandardCharsets.UTF_8, Look.Colour.YES);

  WatchEndurance(Path root) {
    job = JobFile.read(root.resolve("recordings/motor-right/job.toml"));
    live = new LiveCapture("rig", job);
    bench =
        new ScriptedRig(
            new RigPlan(job.sheet(), Setting.MIS_SET, 3, Kit.FULL, Encoding.FRAMES, 0, 0),
            (bytes, length) -> {
              encoder.received(bench().rig.nowNs() / 1000, bytes, 0, length);
              live.onBytes(encoder.bytes(), encoder.length());
            });
    encoder.begin(
        new CaptureBegin(
            CaptureFormat.MAJOR,
            CaptureFormat.MINOR,
            Optional.of(Drive.HAND),
            Optional.empty(),
            0,
            job.sha256(),
            "test",
            "port",
            "",
            ""));
    live.onBytes(encoder.bytes(), encoder.length());
    bench.send(new Hello(1, 0, Talk.FRAMES.code()), Encoding.FRAMES);
    bench.send(new Start(200_000, 0), Encoding.FRAMES);
  }

  private ScriptedRig bench() {
    return bench;
  }

  /** There and back by hand, until so many minutes of the session have passed. */
  void playUntil(double minutes) throws BadLine {
    while (bench.rig.nowNs() < minutes * 60e9) {
      bench.play("touch closed", "press closed-stop", "touch open", "press open-stop");
    }
  }

  Cost cost() throws IOException {
    long startNs = System.nanoTime();
    List<RecordingTrace> traces = live.traces();
    long copiedNs = System.nanoTime();
    LiveAnswer answer = LiveAnswer.of(job.sheet(), traces, Optional.empty());
    long explainedNs = System.nanoTime();
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long bytes = threads.getCurrentThreadAllocatedBytes();
    for (int k = 0; k < REDRAWS; k++) {
      View.Seen seen = View.Seen.of(answer, live.latest().orElseThrow().now());
      View.Link link = new View.Link("port", "", k, 200, 0, Optional.empty(), "");
      View view = new View(job.sheet(), link, Optional.of(seen));
      screen.draw(Frame.of(view, TerminalSize.USUAL, Glyphs.UNICODE));
    }
    long drawnNs = System.nanoTime();
    return new Cost(
        bench.rig.nowNs() / 60e9,
        answer.result().changes().size(),
        (drawnNs - explainedNs) * 1e-3 / REDRAWS,
        (threads.getCurrentThreadAllocatedBytes() - bytes) / REDRAWS,
        (copiedNs - startNs) * 1e-6,
        (explainedNs - copiedNs) * 1e-6);
  }

  public static void main(String[] args) throws Exception {
    WatchEndurance session = new WatchEndurance(Path.of(args[0]));
    int minutes = Integer.parseInt(args[1]);
    for (int m = 1; m <= minutes; m = m < 5 ? m + 1 : m + 5) {
      session.playUntil(m);
      session.cost();
      Cost cost = session.cost();
      System.out.printf(
          "%5.1f min  %4d changes  redraw %6.0f us %7d bytes  trace %6.1f ms  explain %6.1f ms%n",
          cost.minutes,
          cost.changes,
          cost.redrawMicros,
          cost.redrawBytes,
          cost.copyMillis,
          cost.explainMillis);
    }
  }
}
