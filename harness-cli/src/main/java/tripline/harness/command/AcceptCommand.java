package tripline.harness.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;

/** Acceptance of one setting over several full strokes. */
public final class AcceptCommand implements Callable<ExitStatus> {
  private final AnalysisArguments arguments = new AnalysisArguments();

  private final CommandSpec spec =
      arguments.command(
          this,
          "Whether these strokes together accept the setting: as check, and where future trips"
              + " will fall against the tolerance, how the contacts repeat, and how many strokes"
              + " would settle what is open.",
          "",
          "Full strokes count, by hand or motor, from all recordings of one setting; the sheet's"
              + " [acceptance] says how many each way, with what confidence, for what share of"
              + " future trips (3, 0.95 and 0.95 where it says nothing). Partial approaches are"
              + " shown and left out.",
          "");

  CommandSpec spec() {
    return spec;
  }

  @Override
  public ExitStatus call() {
    Analysis analysis = Analysis.accepting(arguments, spec.commandLine());
    return analysis.answer(arguments, spec.commandLine().getOut());
  }
}
