package tripline.harness.report.record;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.StrokeAnalysis;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile.Digest;
import tripline.harness.recording.Recordings;
import tripline.harness.report.Specimen;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.DriftResult;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.PointResult;
import tripline.result.AcceptanceResult.RepeatabilityResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.AcceptanceResult.StandOutResult;
import tripline.result.AcceptanceResult.StepResult;
import tripline.result.AcceptanceResult.WorstResult;
import tripline.result.Result;
import tripline.result.Result.PartResult;

/** Results whose strokes were accepted together: of a recording case, or made by hand. */
record AcceptedCase(JobSheet sheet, Result result) {
  private static final Path CASES = Path.of("../recordings");

  /** A case, judged. */
  static AcceptedCase of(String name) {
    Path folder = CASES.resolve(name);
    JobFile job = JobFile.read(folder.resolve("job.toml"));
    List<Path> files =
        Stream.of("hand.csv", "motor.csv")
            .map(folder::resolve)
            .filter(f -> f.toFile().isFile())
            .toList();
    Result result =
        StrokeAnalysis.accepting(
            job.sheet(),
            Recordings.read(files, job, 1, Digest.TAKEN).stream()
                .flatMap(f -> f.traces().stream())
                .toList(),
            Optional.empty());
    return new AcceptedCase(job.sheet(), result);
  }

  /** Markup wherever text can come in, in an acceptance as well. */
  static Result hostile() {
    Result result = Specimen.hostile();
    String text = Specimen.HOSTILE;
    AcceptedTrip trip =
        new AcceptedTrip(
            "close",
            null,
            "11-12",
            "closing",
            true,
            1,
            1,
            0.731,
            0.01,
            0.5,
            0.1,
            0.4,
            0.6,
            36.519,
            0.36,
            0.02,
            List.of(new PartResult(text, 0.01, "normal")),
            0.35,
            1.11,
            Decision.UNDECIDED,
            "few-strokes",
            3,
            0.4,
            null);
    AcceptedTrip third =
        new AcceptedTrip(
            text,
            null,
            text,
            "closing",
            true,
            0,
            1,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            List.of(),
            null,
            null,
            Decision.UNDECIDED,
            text,
            null,
            null,
            null);
    SeriesResult series =
        new SeriesResult(
            text,
            text,
            null,
            "closing",
            7,
            7.7,
            0.1,
            0.3,
            0.28,
            0.001,
            List.of(new PointResult(0, 1, 7.7, true)),
            new OutlierResult(0, 1, 7.9, 2.26, 2.02, 2.139, "outlier"),
            new DriftResult(0.05, 0.001, 5, 1e-6),
            new StepResult(3, 0.2, 0.01, 5, 1e-3));
    return result.accepting(
        new AcceptanceResult(
            Decision.UNDECIDED,
            3,
            0.95,
            0.95,
            9.7888,
            1,
            1,
            2,
            null,
            List.of(trip, third),
            List.of(series),
            List.of(
                new StandOutResult("outlier", text, text, null, "closing", 0.2, 0.01),
                new StandOutResult("drift", text, text, null, "closing", 0.3, 1e-6)),
            new RepeatabilityResult(
                0.01, 4, 0.0277, 2.7718, text, new WorstResult(text, text, 0.1, 0.9, 0.5, 4))));
  }
}
