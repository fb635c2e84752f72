package tripline.harness.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;

/** Desk analysis of recordings of one setting. */
public final class CheckCommand implements Callable<ExitStatus> {
  private final AnalysisArguments arguments = new AnalysisArguments();

  private final CommandSpec spec =
      arguments.command(
          this, "Where each contact changed in these recordings, against the job sheet.");

  CommandSpec spec() {
    return spec;
  }

  @Override
  public ExitStatus call() {
    Analysis analysis = Analysis.of(arguments, spec.commandLine());
    return analysis.answer(arguments, spec.commandLine().getOut());
  }
}
