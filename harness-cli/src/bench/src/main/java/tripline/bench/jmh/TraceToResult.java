package tripline.bench.jmh;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tripline.StrokeAnalysis;
import tripline.bench.MakeRecording;
import tripline.harness.jobfile.JobFile;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.result.Result;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** A trace of four strokes and sixty-four changes to a result: an operation is one analysis. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class TraceToResult {
  private @Nullable JobSheet sheet;
  private List<RecordingTrace> traces = List.of();

  /** Makes the trace. */
  @Setup
  public void make() throws IOException {
    Path job = Files.createTempFile("job", ".toml");
    Files.writeString(job, MakeRecording.sheet());
    sheet = JobFile.read(job).sheet();
    Files.delete(job);
    SampleTape tape = SampleTape.of(20, 4);
    Reduction reduction = new Reduction(SampleTape.settings());
    tape.play(reduction, 0, tape.size, 0);
    traces =
        List.of(
            new RecordingTrace(
                "made", "", Drive.HAND, RecordingTrace.Zero.LOST, reduction.finish()));
  }

  /** Explains and judges it. */
  @Benchmark
  public Result analyse() {
    if (sheet == null) {
      throw new IllegalStateException("not set up");
    }
    return StrokeAnalysis.of(sheet, traces, Optional.empty());
  }
}
