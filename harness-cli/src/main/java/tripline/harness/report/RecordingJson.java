package tripline.harness.report;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.result.Result.MotorResult;
import tripline.result.Result.PathPoint;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SamplingResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.StrokeResult;

/** Recordings and their strokes in the result file. */
final class RecordingJson {
  private RecordingJson() {}

  static void write(RecordingResult recording, Provenance.Made made, JsonOut out)
      throws IOException {
    out.text("file", recording.file());
    out.text("sha256", digest(recording));
    out.text("drive", recording.drive());
    out.text("started", made.started().map(Instant::toString).orElse(null));
    out.text("logger", made.logger().orElse(null));
    out.number("samples", recording.samples());
    out.number("duration_s", recording.durationS());
    out.number("sample_rate_hz", recording.sampleRateHz());
    out.number("noise", recording.noise());
    out.number("quantum", recording.quantum());
    sampling(recording.sampling(), out);
    out.list("strokes", recording.strokes(), RecordingJson::stroke);
    List<PathPoint> path = recording.path().points();
    out.open("path");
    out.numbers("time_s", path.stream().mapToDouble(PathPoint::timeS).toArray());
    out.numbers("position", path.stream().mapToDouble(PathPoint::position).toArray());
    out.close();
  }

  /** A result that does not name its inputs cannot be compared or sealed. */
  private static String digest(RecordingResult recording) {
    if (recording.sha256().isEmpty()) {
      throw new IllegalStateException("no digest was taken of " + recording.file());
    }
    return recording.sha256();
  }

  private static void sampling(SamplingResult sampling, JsonOut out) throws IOException {
    out.number("usual_rate_hz", sampling.usualRateHz());
    out.number("position_rate_hz", sampling.positionRateHz());
    out.open("lost");
    out.number("stretches", (long) sampling.lostStretches());
    out.number("length_s", (Double) sampling.lostS());
    out.whole("samples", sampling.lostSamples());
    out.close();
  }

  private static void stroke(StrokeResult stroke, JsonOut out) throws IOException {
    out.number("number", stroke.number());
    out.text("direction", stroke.direction());
    out.number("from", stroke.from());
    out.number("to", stroke.to());
    out.number("start_s", stroke.startS());
    out.number("end_s", stroke.endS());
    out.truth("full", stroke.full());
    out.text("stopped_by", stroke.stoppedBy());
    out.measured("coast", stroke.coast());
    out.number("stroke_time_s", stroke.strokeTimeS());
    out.number("setting", stroke.setting());
    out.object("motor", stroke.motor(), RecordingJson::motor);
  }

  private static void motor(MotorResult motor, JsonOut out) throws IOException {
    out.measured("run_turns_per_s", motor.runTurnsPerS());
    out.measured("onset_s", motor.onsetS());
    out.measured("onset_position", motor.onsetPosition());
    out.measured("standstill_s", motor.standstillS());
    out.measured("standstill_position", motor.standstillPosition());
    out.measured("margin", motor.margin());
  }

  static void stop(String key, @Nullable StopResult stop, JsonOut out) throws IOException {
    out.object(
        key,
        stop,
        (s, o) -> {
          o.number("value", s.value());
          o.number("u", s.u());
          o.text("source", s.source());
        });
  }
}
