package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import java.util.stream.Stream;
import picocli.CommandLine;
import tripline.harness.command.Commands;
import tripline.harness.command.TriplineCommand;

/**
 * What one command line did.
 *
 * @param status exit status
 * @param answers all of standard output
 * @param errors all of standard error
 */
record CommandRun(int status, String answers, String errors) {
  static {
    // What comes there is said by the build to its test runner; a command must not take it away.
    System.setIn(InputStream.nullInputStream());
  }

  /** Runs it; a command that ends with a status its help does not list fails the test. */
  static CommandRun of(String... args) {
    StringWriter answers = new StringWriter();
    StringWriter errors = new StringWriter();
    int status =
        Main.run(new Streams(new PrintWriter(answers), new PrintWriter(errors, true)), args);
    if (args.length > 0 && commands().contains(args[0])) {
      assertThat(listed(args[0])).as("statuses in the help of " + args[0]).contains("" + status);
    }
    return new CommandRun(status, answers.toString(), errors.toString());
  }

  /** Standard error with each notice in one line again, however it was laid out. */
  Stream<String> notices() {
    return errors.replace("\n  ", " ").lines();
  }

  /** Every command there is. */
  static Set<String> commands() {
    return Commands.commandLine(new TriplineCommand()).getSubcommands().keySet();
  }

  /** Statuses that the help of a command lists. */
  static Set<String> listed(String command) {
    CommandLine line = Commands.commandLine(new TriplineCommand(), command);
    return line.getSubcommands()
        .get(command)
        .getCommandSpec()
        .usageMessage()
        .exitCodeList()
        .keySet();
  }
}
