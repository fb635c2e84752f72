package tripline.harness.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.compare.Comparison;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.OutputFailure;
import tripline.harness.report.AnswerFile;
import tripline.harness.report.CompareJson;
import tripline.harness.report.CompareText;
import tripline.harness.report.ComparedFiles;
import tripline.harness.report.SafeText;
import tripline.harness.report.TextStyle;
import tripline.harness.resultfile.AccountFile;
import tripline.harness.resultfile.AccountFile.Which;
import tripline.harness.resultfile.ResultFile;

/** Two results of one valve. */
@Command(
    name = "compare",
    description = {
      "What moved between two results of one valve, by how much, and whether that is beyond doubt.",
      "One result alone that tells of an adjustment is compared with itself, as found and as left. "
          + "Errors that both results share cancel; two results share a hard stop only if one "
          + "brought it with --reference."
    })
public final class CompareCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(index = "0", paramLabel = "BEFORE", description = "Result file (JSON), as left.")
  private @Nullable Path before;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "AFTER",
      description = "Later result file of the same valve, as left.")
  private @Nullable Path after;

  @Option(
      names = "--as-found",
      description = "Take AFTER as it was found, before anything was adjusted.")
  private boolean asFound;

  @Option(
      names = "--json",
      paramLabel = "FILE",
      description =
          "Write the comparison as JSON; - is standard output, which then holds nothing else.")
  private @Nullable Path json;

  @Option(names = "--quiet", description = "Print nothing but what --json - asks for.")
  private boolean quiet;

  @Override
  public ExitStatus call() {
    if (spec == null || before == null) {
      throw new IllegalStateException("called without its command line");
    }
    boolean onOutput = StandardOutput.isMeantBy(json);
    if (json != null && !onOutput) {
      List<Path> inputs = Stream.concat(Stream.of(before), Stream.ofNullable(after)).toList();
      OwnInputs.spare(spec.commandLine(), inputs, List.of(json));
    }
    ComparedFiles files = compared(before);
    PrintWriter out = spec.commandLine().getOut();
    if (!quiet && !onOutput) {
      CompareText.write(files, TextStyle.ofProcess(), out);
    }
    if (onOutput) {
      try {
        CompareJson.write(files, out);
      } catch (IOException e) {
        throw OutputFailure.of("standard output", e);
      }
    } else if (json != null) {
      AnswerFile.write(json, writer -> CompareJson.write(files, writer));
    }
    return switch (files.comparison().answer()) {
      case NO_MOVE -> ExitStatus.ACCEPTED;
      case MOVED -> ExitStatus.REJECTED;
      case NOT_KNOWN -> ExitStatus.UNDECIDED;
    };
  }

  private ComparedFiles compared(Path first) {
    ResultFile earlier = ResultFile.read(first);
    if (after == null) {
      return compared(foundIn(earlier), AccountFile.of(earlier, Which.AS_LEFT));
    }
    Which which = asFound ? Which.AS_FOUND : Which.AS_LEFT;
    return compared(AccountFile.of(earlier, Which.AS_LEFT), AccountFile.read(after, which));
  }

  private static AccountFile foundIn(ResultFile result) {
    if (!AccountFile.tellsAsFound(result)) {
      throw new InputFailure(
          result.file(),
          "tells of one setting only, expected a second result or one with an adjustment in it");
    }
    return AccountFile.of(result, Which.AS_FOUND);
  }

  private static ComparedFiles compared(AccountFile before, AccountFile after) {
    Comparison.refusal(before.account(), after.account())
        .ifPresent(
            why -> {
              throw new InputFailure(
                  after.file(),
                  SafeText.line(why) + " (as in " + SafeText.line(before.file()) + ")");
            });
    return new ComparedFiles(
        Comparison.of(before.account(), after.account()), named(before), named(after));
  }

  private static ComparedFiles.Named named(AccountFile file) {
    return new ComparedFiles.Named(file.file(), file.which() == Which.AS_FOUND, file.started());
  }
}
