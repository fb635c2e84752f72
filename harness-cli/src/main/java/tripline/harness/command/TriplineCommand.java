package tripline.harness.command;

import org.jspecify.annotations.Nullable;
import org.slf4j.event.Level;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import tripline.Version;

/** The command line as a whole: every other command hangs below it. */
@Command(
    name = "tripline",
    description =
        "Where a valve actuator's position contacts really changed, whether that is accepted, and what to turn.",
    mixinStandardHelpOptions = true,
    scope = ScopeType.INHERIT,
    versionProvider = TriplineCommand.StatedVersion.class,
    synopsisSubcommandLabel = "COMMAND",
    usageHelpAutoWidth = false,
    sortOptions = false,
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:accepted, or done",
      "1:rejected",
      "2:the command line is wrong",
      "3:undecided",
      "4:an input cannot be used",
      "5:the link to the logger failed",
      "6:an answer could not be written",
      "70:a fault of the program itself"
    },
    footer = {
      "",
      "Isolate, lock out and prove dead before the cover comes off. The plant's",
      "procedures, local codes and licensed practice govern; a verdict replaces none."
    })
public final class TriplineCommand {
  @Option(
      names = "--log",
      paramLabel = "LEVEL",
      scope = ScopeType.INHERIT,
      description =
          "Log to standard error from this level on: ${COMPLETION-CANDIDATES}"
              + " (default: warn, or what TRIPLINE_LOG names).")
  private @Nullable Level log;

  /** The level asked for on the command line; null where none was. */
  public @Nullable Level log() {
    return log;
  }

  /** Answers {@code --version}. */
  static final class StatedVersion implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"tripline " + Version.TEXT};
    }
  }
}
