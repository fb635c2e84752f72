package tripline.harness.command;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tripline.harness.conform.ConformText;
import tripline.harness.conform.Conformity;
import tripline.harness.conform.Outcome;
import tripline.harness.conform.Report;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.SerialPorts;

/** Holds a logger to the link protocol. */
@Command(
    name = "conform",
    description = {
      "Does this logger speak the link protocol properly?",
      "It is asked, told wrong and damaged things, made to run and to stop; each duty of the"
          + " specification is printed with how it stands:",
      "  holds      tried and kept",
      "  FAILS      seen broken, with what was seen",
      "  not seen   it should be kept, and nothing happened by which to tell",
      "  not tried  no such ability, or not asked for",
      "It takes about half a minute and leaves the logger idle. A logger that samples is stopped."
          + " Operate a contact meanwhile, or edges cannot be judged."
    })
public final class ConformCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Mixin private final PortArguments arguments = new PortArguments();

  @Option(
      names = "--power-cycle",
      description =
          "Also ask for the logger to be switched off and on, and judge what it says then (L1).")
  private boolean powerCycle;

  @Override
  public ExitStatus call() {
    if (spec == null) {
      throw new IllegalStateException("called without its command line");
    }
    BaudRate baud = arguments.baud(spec.commandLine());
    PrintWriter notes = spec.commandLine().getErr();
    Conformity conformity =
        new Conformity(
            arguments.name(),
            SerialPorts.to(arguments.name(), baud),
            System::nanoTime,
            LockSupport::parkNanos,
            baud.bitsPerSecond());
    Runnable ask = () -> notes.println("switch the logger off and on now, within a minute");
    Report report = conformity.examine(powerCycle ? Optional.of(ask) : Optional.empty());
    ConformText.write(report, spec.commandLine().getOut());
    return report.count(Outcome.FAILS) > 0
        ? ExitStatus.REJECTED
        : report.count(Outcome.NOT_SEEN) > 0 ? ExitStatus.UNDECIDED : ExitStatus.ACCEPTED;
  }
}
