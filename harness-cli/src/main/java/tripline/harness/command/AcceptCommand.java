package tripline.harness.command;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Acceptance of one setting over several full strokes. */
@Command(
    name = "accept",
    description = {
      "Whether these strokes together accept the setting: as check, and where future trips"
          + " will fall against the tolerance, how the contacts repeat, and how many strokes"
          + " would settle what is open.",
      "",
      "Full strokes count, by hand or motor, from all recordings of one setting; the sheet's"
          + " [acceptance] says how many each way, with what confidence, for what share of"
          + " future trips (3, 0.95 and 0.95 where it says nothing). Partial approaches are"
          + " shown and left out.",
      ""
    })
public final class AcceptCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Mixin private final AnalysisArguments arguments = new AnalysisArguments();

  @Override
  public ExitStatus call() {
    if (spec == null) {
      throw new IllegalStateException("called without its command line");
    }
    Analysis analysis = Analysis.accepting(arguments, spec.commandLine());
    return analysis.answer(arguments, spec.commandLine().getOut());
  }
}
