package tripline.harness.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import tripline.harness.recording.RecordingFile.Digest;

/** What the commands that analyse recordings are told. */
final class AnalysisArguments {
  private final PositionalParamSpec job =
      PositionalParamSpec.builder()
          .index("0")
          .required(true)
          .type(Path.class)
          .paramLabel("JOB")
          .description("Job sheet (TOML).")
          .build();

  private final PositionalParamSpec recordings =
      PositionalParamSpec.builder()
          .index("1..*")
          .arity("1..*")
          .required(true)
          .type(List.class)
          .auxiliaryTypes(Path.class)
          .paramLabel("RECORDING")
          .description("Recordings (CSV or captures) of one setting, in the order they were made.")
          .build();

  private final OptionSpec json =
      OptionSpec.builder("--json")
          .paramLabel("FILE")
          .type(Path.class)
          .description(
              "Write the result as JSON; - is standard output, which then holds nothing else.")
          .build();

  private final OptionSpec reports =
      OptionSpec.builder("--report")
          .paramLabel("FILE")
          .type(List.class)
          .auxiliaryTypes(Path.class)
          .description("Write the record to sign, as .html or .pdf; may be given several times.")
          .build();

  private final OptionSpec reference =
      OptionSpec.builder("--reference")
          .paramLabel("RESULT")
          .type(Path.class)
          .description("Take hard stops that these recordings do not touch from an earlier result.")
          .build();

  private final OptionSpec threads =
      OptionSpec.builder("--threads")
          .paramLabel("N")
          .type(int.class)
          .defaultValue("1")
          .description("Read so many recordings at a time (default: ${DEFAULT-VALUE}).")
          .build();

  private final OptionSpec quiet =
      OptionSpec.builder("--quiet")
          .type(boolean.class)
          .description("Print nothing but what --json - asks for.")
          .build();

  /** The command that is told so. */
  CommandSpec command(Callable<ExitStatus> command, String... description) {
    CommandSpec spec = CommandSpec.wrapWithoutInspection(command);
    spec.usageMessage().description(description);
    return spec.addPositional(job)
        .addPositional(recordings)
        .addOption(json)
        .addOption(reports)
        .addOption(reference)
        .addOption(threads)
        .addOption(quiet);
  }

  Path job() {
    Path given = job.getValue();
    return given(given);
  }

  List<Path> recordings() {
    List<Path> given = recordings.getValue();
    return given(given);
  }

  @Nullable Path json() {
    return json.getValue();
  }

  List<Path> reports() {
    List<Path> given = reports.getValue();
    return given == null ? List.of() : given;
  }

  @Nullable Path reference() {
    return reference.getValue();
  }

  /** Every file that is read. */
  List<Path> inputs() {
    return Stream.of(Stream.of(job()), recordings().stream(), Stream.ofNullable(reference()))
        .flatMap(paths -> paths)
        .toList();
  }

  /** Every file that is to be written. */
  List<Path> outputs() {
    Stream<Path> result = wantsJsonOnOutput() ? Stream.empty() : Stream.ofNullable(json());
    return Stream.concat(result, reports().stream()).toList();
  }

  int threads() {
    Integer given = threads.getValue();
    return given(given);
  }

  /** Whether the answer in words is wanted on standard output. */
  boolean wantsText() {
    Boolean given = quiet.getValue();
    return !Boolean.TRUE.equals(given) && !wantsJsonOnOutput();
  }

  boolean wantsJsonOnOutput() {
    return StandardOutput.isMeantBy(json());
  }

  /** The answer in words names no digest. */
  Digest wantsDigests() {
    return json() == null && reports().isEmpty() ? Digest.NOT_WANTED : Digest.TAKEN;
  }

  private static <T> T given(@Nullable T argument) {
    if (argument == null) {
      throw new IllegalStateException("called without its command line");
    }
    return argument;
  }
}
