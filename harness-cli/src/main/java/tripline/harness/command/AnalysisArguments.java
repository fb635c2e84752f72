package tripline.harness.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What the commands that analyse recordings are told. */
final class AnalysisArguments {
  @Parameters(index = "0", paramLabel = "JOB", description = "Job sheet (TOML).")
  private @Nullable Path job;

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "RECORDING",
      description = "Recordings (CSV) of one setting, in the order they were made.")
  private @Nullable List<Path> recordings;

  @Option(
      names = "--json",
      paramLabel = "FILE",
      description =
          "Write the result as JSON; - is standard output, which then holds nothing else.")
  private @Nullable Path json;

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description = "Write the record to sign, as .html or .pdf; may be given several times.")
  private List<Path> reports = new ArrayList<>();

  @Option(
      names = "--reference",
      paramLabel = "RESULT",
      description = "Take hard stops that these recordings do not touch from an earlier result.")
  private @Nullable Path reference;

  @Option(
      names = "--threads",
      paramLabel = "N",
      defaultValue = "1",
      description = "Read so many recordings at a time (default: ${DEFAULT-VALUE}).")
  private int threads;

  @Option(names = "--quiet", description = "Print nothing but what --json - asks for.")
  private boolean quiet;

  Path job() {
    return given(job);
  }

  List<Path> recordings() {
    return given(recordings);
  }

  @Nullable Path json() {
    return json;
  }

  List<Path> reports() {
    return reports;
  }

  @Nullable Path reference() {
    return reference;
  }

  int threads() {
    return threads;
  }

  /** Whether the answer in words is wanted on standard output. */
  boolean wantsText() {
    return !quiet && !wantsJsonOnOutput();
  }

  boolean wantsJsonOnOutput() {
    return json != null && json.toString().equals("-");
  }

  private static <T> T given(@Nullable T argument) {
    if (argument == null) {
      throw new IllegalStateException("called without its command line");
    }
    return argument;
  }
}
