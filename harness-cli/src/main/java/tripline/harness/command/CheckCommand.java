package tripline.harness.command;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Desk analysis of recordings of one setting. */
@Command(
    name = "check",
    description = "Where each contact changed in these recordings, against the job sheet.")
public final class CheckCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Mixin private final AnalysisArguments arguments = new AnalysisArguments();

  @Override
  public ExitStatus call() {
    if (spec == null) {
      throw new IllegalStateException("called without its command line");
    }
    Analysis analysis = Analysis.of(arguments, spec.commandLine());
    return analysis.answer(arguments, spec.commandLine().getOut());
  }
}
