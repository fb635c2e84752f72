package tripline.harness.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.jobfile.JobFile;
import tripline.harness.report.ChartText;
import tripline.harness.report.Glyphs;

/** Draws and proof-reads a development chart. */
@Command(name = "chart", description = "Draw and proof-read the development chart of a job sheet.")
public final class ChartCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "JOB", description = "Job sheet (TOML).")
  private @Nullable Path job;

  @Override
  public ExitStatus call() {
    if (spec == null || job == null) {
      throw new IllegalStateException("called without its command line");
    }
    JobFile file = JobFile.read(job);
    ChartText.write(file, Glyphs.ofProcess(), spec.commandLine().getOut());
    return ExitStatus.ACCEPTED;
  }
}
