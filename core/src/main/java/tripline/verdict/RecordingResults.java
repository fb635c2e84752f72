package tripline.verdict;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.assess.Assessment;
import tripline.assess.EndJudgement;
import tripline.assess.ReadingMap;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.develop.Stroke.Powered;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.reduce.Loss;
import tripline.reduce.Trace;
import tripline.result.Result.MotorResult;
import tripline.result.Result.PathResult;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SamplingResult;
import tripline.result.Result.StrokeResult;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** Recordings and their strokes as the result writes them. */
final class RecordingResults {
  private static final double NS = 1e-9;

  private RecordingResults() {}

  static RecordingResult of(Assessment assessment, int index) {
    Development development = assessment.development();
    RecordingTrace recording = development.recordings().get(index);
    Trace trace = recording.trace();
    double durationS = (trace.lastNs() - trace.firstNs()) * NS;
    return new RecordingResult(
        recording.name(),
        recording.sha256(),
        recording.drive().name().toLowerCase(Locale.ROOT),
        trace.rows(),
        durationS,
        durationS > 0 ? (trace.rows() - 1) / durationS : 0,
        trace.noise(),
        trace.quantum(),
        sampling(trace, durationS),
        development.strokes().stream()
            .filter(s -> s.recording() == index)
            .map(s -> stroke(assessment, s))
            .toList(),
        new PathResult(ReadingMap.of(development, index).path(trace.outline(), trace.firstNs())));
  }

  private static SamplingResult sampling(Trace trace, double durationS) {
    List<Loss> losses = trace.losses();
    List<Loss> rows = losses.stream().filter(l -> l.what() == Loss.What.ROWS).toList();
    double wholeS = durationS - lengthS(rows);
    return new SamplingResult(
        wholeS > 0 ? (trace.rows() - 1 - rows.size()) / wholeS : null,
        durationS > 0 && trace.positions() > 1 ? (trace.positions() - 1) / durationS : null,
        losses.size(),
        lengthS(losses),
        losses.stream().anyMatch(l -> l.samples() < 0)
            ? null
            : losses.stream().mapToLong(Loss::samples).sum());
  }

  private static double lengthS(List<Loss> losses) {
    return losses.stream().mapToLong(l -> l.toNs() - l.fromNs()).sum() * NS;
  }

  private static StrokeResult stroke(Assessment assessment, Stroke stroke) {
    boolean motor = stroke.drive() == Drive.MOTOR;
    return new StrokeResult(
        stroke.number(),
        stroke.direction().word(),
        stroke.from(),
        stroke.to(),
        stroke.startS(),
        stroke.endS(),
        stroke.full(),
        stroke.stoppedBy().word(),
        Figures.measured(stroke.powered().flatMap(Powered::coast)),
        motor ? stroke.endS() - stroke.startS() : null,
        stroke.setting(),
        stroke.powered().map(p -> motor(assessment, stroke, p)).orElse(null));
  }

  private static MotorResult motor(Assessment assessment, Stroke stroke, Powered powered) {
    return new MotorResult(
        Figures.measured(powered.runTurnsPerS()),
        Figures.measured(powered.onsetS()),
        Figures.measured(powered.onsetX()),
        Figures.measured(powered.standstillS()),
        Figures.measured(powered.standstillX()),
        margin(assessment, stroke));
  }

  private static tripline.result.Result.@Nullable Measured margin(
      Assessment assessment, Stroke stroke) {
    Direction direction = stroke.direction();
    Optional<Estimate> margin =
        EndJudgement.margin(assessment.development(), direction.toward(), stroke);
    return Figures.measured(margin);
  }
}
