package tripline.harness.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tripline.StrokeAnalysis;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureFormat;
import tripline.capture.LineChange;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ScriptedRig;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Start;
import tripline.link.Talk;
import tripline.live.LiveAnswer;
import tripline.result.Result;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** The live answer is that of {@code check} on the capture as it is, wherever it is cut off. */
class LiveCaptureTest {
  private static final String NAME = "rig.capture";
  private final JobFile job =
      JobFile.read(
          Path.of(System.getProperty("tripline.root"), "recordings", "motor-right", "job.toml"));
  private final ByteArrayOutputStream file = new ByteArrayOutputStream();
  private final CaptureEncoder encoder = new CaptureEncoder();
  private long chunks;

  private void keep() {
    file.write(encoder.bytes(), 0, encoder.length());
  }

  private void begin() {
    encoder.begin(
        new CaptureBegin(
            CaptureFormat.MAJOR,
            CaptureFormat.MINOR,
            Optional.of(Drive.HAND),
            Optional.empty(),
            1_772_439_245_000_000L,
            "0".repeat(64),
            "test",
            "port",
            "CW-114",
            "job.toml"));
    keep();
  }

  private void line(LineChange.Event event, LineChange.Cause cause) {
    encoder.line(chunks * 1000, new LineChange(event, cause, 0, ""));
    keep();
  }

  /**
   * A session with all that can happen to it: marks, adjusting, losses, a plug pulled, power lost.
   */
  private byte[] session(Encoding talk) throws BadLine {
    begin();
    ScriptedRig bench =
        new ScriptedRig(
            new RigPlan(job.sheet(), Setting.MIS_SET, 3, Kit.FULL, Encoding.FRAMES, 0, 0),
            (bytes, length) -> {
              encoder.received(++chunks * 1000, bytes, 0, length);
              keep();
            });
    line(LineChange.Event.OPENED, LineChange.Cause.NONE);
    bench.send(
        new Hello(1, 0, (talk == Encoding.LINES ? Talk.LINES : Talk.FRAMES).code()),
        Encoding.FRAMES);
    bench.send(new Start(200_000, 40), talk);
    bench.play("wait 1", "touch closed", "press closed-stop", "crank open 3", "lose 3", "wait 1");
    bench.play("set close", "press adjusted", "crank open 1", "touch closed");
    bench.play("unplug");
    line(LineChange.Event.LOST, LineChange.Cause.UNPLUGGED);
    bench.play("crank open 0.5", "plug");
    line(LineChange.Event.OPENED, LineChange.Cause.NONE);
    bench.send(new Hello(1, 0, Talk.KEEP.code()), talk);
    bench.play("touch open", "press open-stop", "touch closed");
    bench.play("restart");
    bench.send(
        new Hello(1, 0, (talk == Encoding.LINES ? Talk.LINES : Talk.FRAMES).code()),
        Encoding.FRAMES);
    bench.send(new Start(200_000, 40), talk);
    bench.play("touch open", "press open-stop", "wait 1");
    return file.toByteArray();
  }

  private Optional<Result> checked(byte[] bytes, int length) {
    CaptureReading reading = new CaptureReading(NAME, job, RecordingFile.Rank.FIRST);
    try {
      reading.onBytes(bytes, length);
      List<RecordingTrace> traces = reading.finish(Optional.of(() -> "")).traces();
      return Optional.of(StrokeAnalysis.of(job.sheet(), traces, Optional.empty()));
    } catch (InputFailure e) {
      return Optional.empty();
    }
  }

  private Optional<Result> watched(LiveCapture live) {
    List<RecordingTrace> traces = live.traces();
    return traces.isEmpty()
        ? Optional.empty()
        : Optional.of(LiveAnswer.of(job.sheet(), traces, Optional.empty()).result());
  }

  @Test
  void answersAsCheckDoesAtEveryCut() throws BadLine {
    cutAnywhere(session(Encoding.FRAMES), 7);
  }

  @Test
  void answersAsCheckDoesAtEveryCutOfPlainText() throws BadLine {
    cutAnywhere(session(Encoding.LINES), 8);
  }

  private void cutAnywhere(byte[] bytes, long seed) {
    Random random = new Random(seed);
    LiveCapture live = new LiveCapture(NAME, job);
    Set<Integer> recordings = new HashSet<>();
    int at = 0;
    int compared = 0;
    while (at < bytes.length) {
      int length = Math.min(bytes.length - at, 1 + random.nextInt(bytes.length / 12));
      live.onBytes(Arrays.copyOfRange(bytes, at, at + length), length);
      at += length;
      Optional<Result> expected = checked(bytes, at);
      if (expected.isPresent()) {
        assertThat(watched(live)).as("after %d bytes", at).isEqualTo(expected);
        recordings.add(expected.get().recordings().size());
        compared++;
      }
    }
    live.finish();
    assertThat(watched(live)).isEqualTo(checked(bytes, bytes.length));
    assertThat(compared).isGreaterThan(10);
    assertThat(recordings).as("power was lost on the way").contains(1, 2);
  }

  /** Edges that wait for later samples are shown at once. */
  @Test
  void showsWhatWaitsForLaterSamples() throws BadLine {
    byte[] bytes = session(Encoding.FRAMES);
    LiveCapture live = new LiveCapture(NAME, job);
    assertThat(live.latest()).isEmpty();
    Set<Long> closed = new HashSet<>();
    for (int at = 0; at < bytes.length; at += 64) {
      int length = Math.min(64, bytes.length - at);
      live.onBytes(Arrays.copyOfRange(bytes, at, at + length), length);
      live.latest().ifPresent(l -> closed.add(l.now().closed()));
    }
    assertThat(closed).hasSizeGreaterThan(5);
    assertThat(live.latest().orElseThrow().recording()).isEqualTo(1);
    assertThat(live.notices()).anyMatch(n -> n.contains("switched on again"));
  }
}
