package tripline.harness.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.convert.Conversion;
import tripline.harness.jobfile.JobFile;
import tripline.harness.report.SafeText;

/** Makes one recording format of another. */
@Command(
    name = "convert",
    description = {
      "Make a CSV recording of a capture (OUT in .csv) or a capture of a CSV recording (OUT in .bin).",
      "A CSV recording in a foreign layout becomes one in the usual layout with --job."
    })
public final class ConvertCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "IN",
      description = "Recording; its first byte tells which.")
  private @Nullable Path in;

  @Parameters(index = "1", paramLabel = "OUT", description = "New file in .csv or .bin.")
  private @Nullable Path out;

  @Option(
      names = "--job",
      paramLabel = "JOB",
      description =
          "Job sheet that says how a foreign CSV is written, and which columns it asks for.")
  private @Nullable Path job;

  @Override
  public ExitStatus call() {
    if (spec == null || in == null || out == null) {
      throw new IllegalStateException("called without its command line");
    }
    CommandLine line = spec.commandLine();
    Path from = in;
    Path to = out;
    Conversion.Target target =
        Conversion.Target.of(to)
            .orElseThrow(
                () ->
                    new ParameterException(
                        line, "OUT is %s, expected a name in .csv or .bin".formatted(to)));
    Optional<JobFile> sheet = Optional.ofNullable(job).map(JobFile::read);
    Conversion.run(
            from, to, target, sheet, notice -> Notices.say(from + ": " + notice, line.getErr()))
        .forEach(written -> line.getOut().println(SafeText.line(written)));
    return ExitStatus.ACCEPTED;
  }
}
