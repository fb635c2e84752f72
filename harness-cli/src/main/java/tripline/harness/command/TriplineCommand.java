package tripline.harness.command;

import org.jspecify.annotations.Nullable;
import org.slf4j.event.Level;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
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
  private static final String[] EXIT_STATUSES = {
    "0:accepted, or done",
    "1:rejected",
    "2:the command line is wrong",
    "3:undecided",
    "4:an input cannot be used",
    "5:the link to the logger failed",
    "6:an answer could not be written",
    "70:a fault of the program itself"
  };

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
        .exitCodeListHeading("%nExit status:%n")
        .exitCodeList(UsageMessageSpec.keyValuesMap(EXIT_STATUSES))
        .footer(
            "",
            "Isolate, lock out and prove dead before the cover comes off. The plant's",
            "procedures, local codes and licensed practice govern; a verdict replaces none.");
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
