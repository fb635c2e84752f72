package tripline.harness.command;

import org.jspecify.annotations.Nullable;
import org.slf4j.event.Level;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ScopeType;
import tripline.Version;

/**
 * The command line as a whole: every other command hangs below it and has its options too.
 *
 * <p>Said in calls, as {@link AnalysisArguments} is, and not in annotations as in the other
 * commands: to read an annotation the virtual machine makes a class of it first, which is a sixth
 * of the time to the answer on a small recording.
 */
public final class TriplineCommand {
  private final OptionSpec log =
      OptionSpec.builder("--log")
          .paramLabel("LEVEL")
          .type(Level.class)
          .scopeType(ScopeType.INHERIT)
          .description(
              "Log to standard error from this level on: ${COMPLETION-CANDIDATES}"
                  + " (default: warn, or what TRIPLINE_LOG names).")
          .build();

  /** The level asked for on the command line; null where none was. */
  public @Nullable Level log() {
    return log.getValue();
  }

  /** As picocli knows it, without commands below it. */
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.wrapWithoutInspection(this);
    spec.name("tripline").version("tripline " + Version.TEXT).scopeType(ScopeType.INHERIT);
    spec.usageMessage()
        .description(
            "Where a valve actuator's position contacts really changed, whether that is accepted, and what to turn.")
        .synopsisSubcommandLabel("COMMAND")
        .autoWidth(false)
        .sortOptions(false)
        .footer(
            "",
            "Isolate, lock out and prove dead before the cover comes off. The plant's",
            "procedures, local codes and licensed practice govern; a verdict replaces none.");
    Endings.ofProgram().show(spec.usageMessage());
    return spec.addOption(help()).addOption(version()).addOption(log);
  }

  private static OptionSpec help() {
    return OptionSpec.builder("-h", "--help")
        .usageHelp(true)
        .type(boolean.class)
        .scopeType(ScopeType.INHERIT)
        .description("Show this help message and exit.")
        .build();
  }

  private static OptionSpec version() {
    return OptionSpec.builder("-V", "--version")
        .versionHelp(true)
        .type(boolean.class)
        .scopeType(ScopeType.INHERIT)
        .description("Print version information and exit.")
        .build();
  }
}
