package tripline.harness.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.failure.OutputFailure;
import tripline.harness.report.AnswerFile;
import tripline.harness.report.SafeText;
import tripline.harness.report.TextStyle;
import tripline.harness.summary.Summary;
import tripline.harness.summary.SummaryData;
import tripline.harness.summary.SummaryPage;
import tripline.harness.summary.SummaryText;

/** A folder of results at a glance. */
@Command(
    name = "summary",
    description = {
      "One line an actuator, worst first, from all result files below a folder (links below it are"
          + " not followed).",
      "A file that cannot be used is named on standard error, and the status is then 4; all others"
          + " are answered. What the results decide leaves the status alone."
    })
public final class SummaryCommand implements Callable<ExitStatus> {
  /** More lines than this help nobody. */
  private static final int MOST_NAMED = 20;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "Folder with result files (.json).")
  private @Nullable Path folder;

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description = "Write the table as a page; - is standard output.")
  private @Nullable Path html;

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Write the rows as CSV; - is standard output, which then holds nothing else.")
  private @Nullable Path csv;

  @Option(
      names = "--ndjson",
      paramLabel = "FILE",
      description = "Write one JSON object a line; - is standard output.")
  private @Nullable Path ndjson;

  @Override
  public ExitStatus call() {
    if (spec == null || folder == null) {
      throw new IllegalStateException("called without its command line");
    }
    PrintWriter out = spec.commandLine().getOut();
    long toOutput = Stream.of(csv, ndjson, html).filter(StandardOutput::isMeantBy).count();
    if (toOutput > 1) {
      throw new ParameterException(
          spec.commandLine(), "more than one answer is to go to -, expected one");
    }
    OwnInputs.spareBelow(
        spec.commandLine(),
        folder,
        Stream.of(csv, ndjson, html)
            .flatMap(Stream::ofNullable)
            .filter(f -> !StandardOutput.isMeantBy(f))
            .toList());
    Summary summary = Summary.of(folder);
    name(summary, spec.commandLine().getErr());
    write(csv, out, writer -> SummaryData.csv(summary, writer));
    write(ndjson, out, writer -> SummaryData.ndjson(summary, writer));
    write(html, out, writer -> SummaryPage.write(summary, writer));
    if (toOutput == 0) {
      SummaryText.write(summary, TextStyle.ofProcess(), out);
    }
    return summary.damaged().isEmpty() ? ExitStatus.ACCEPTED : ExitStatus.INPUT;
  }

  private static void name(Summary summary, PrintWriter errors) {
    summary.damaged().stream().limit(MOST_NAMED).map(SafeText::line).forEach(errors::println);
    int more = summary.damaged().size() - MOST_NAMED;
    if (more > 0) {
      errors.println(more + " more that could not be used");
    }
  }

  private static void write(@Nullable Path file, PrintWriter out, AnswerFile.Answer answer) {
    if (file == null) {
      return;
    }
    if (!StandardOutput.isMeantBy(file)) {
      AnswerFile.write(file, answer);
      return;
    }
    try {
      answer.write(out);
    } catch (IOException e) {
      throw OutputFailure.of("standard output", e);
    }
  }
}
