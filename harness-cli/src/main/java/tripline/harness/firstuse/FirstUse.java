package tripline.harness.firstuse;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.slf4j.LoggerFactory;
import tripline.StrokeAnalysis;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile;
import tripline.harness.recording.Recordings;
import tripline.harness.report.CheckText;
import tripline.harness.report.Provenance;
import tripline.harness.report.ResultJson;
import tripline.harness.report.TextStyle;
import tripline.result.Result;

/**
 * Analyses a made-up recording for no other reason than that it is then done for the first time.
 */
public final class FirstUse {
  private static final List<String> ANALYSES = List.of("check", "accept");

  /** In the digests' place: nobody reads it. */
  private static final String NO_DIGEST = "0".repeat(64);

  private final boolean text;
  private final boolean json;

  FirstUse(List<String> args) {
    text = !args.contains("--quiet");
    json = args.contains("--json");
  }

  /** Begins, where the command line asks for an analysis and a second processor has the time. */
  public static void begin(String... args) {
    if (args.length > 0
        && ANALYSES.contains(args[0])
        && Runtime.getRuntime().availableProcessors() > 1) {
      Thread thread = new Thread(new FirstUse(Arrays.asList(args))::run, "first use");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private void run() {
    try {
      analyse();
    } catch (IOException | RuntimeException e) {
      LoggerFactory.getLogger(FirstUse.class).debug("the first use failed", e);
    }
  }

  void analyse() throws IOException {
    JobFile job = JobFile.ofText("made up", MadeUpJob.SHEET);
    RecordingFile recording = Recordings.ofBytes("made up", MadeUpJob.recording(), NO_DIGEST, job);
    Result result = StrokeAnalysis.of(job.sheet(), recording.traces(), Optional.empty());
    if (json) {
      Provenance provenance =
          new Provenance(
              job.file(),
              job.sha256(),
              List.of(new Provenance.Made(recording.started(), recording.logger())));
      ResultJson.write(result, provenance, Writer.nullWriter());
    }
    if (text) {
      CheckText.write(
          result, job.sheet(), TextStyle.ofProcess(), new PrintWriter(Writer.nullWriter()));
    }
  }
}
