package tripline.harness;

import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IExecutionStrategy;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.UnmatchedArgumentException;
import tripline.harness.command.Commands;
import tripline.harness.command.ExitStatus;
import tripline.harness.command.TriplineCommand;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.LinkFailure;
import tripline.harness.failure.OutputFailure;
import tripline.harness.firstuse.FirstUse;

/** Entry point: runs the command asked for and turns whatever comes of it into an exit status. */
public final class Main {
  private Main() {}

  /** Runs the command line given and ends the process with its exit status. */
  public static void main(String[] args) {
    // Else picocli looks for Groovy in every jar there is.
    System.setProperty("picocli.disable.closures", "true");
    FirstUse.begin(args);
    System.exit(run(Streams.ofProcess(), args));
  }

  /** The exit status of the command line given; every answer has been written when it returns. */
  static int run(Streams streams, String... args) {
    TriplineCommand root = new TriplineCommand();
    return run(streams, root, Commands.commandLine(root, args), args);
  }

  /** As above with the commands of the line given. */
  static int run(Streams streams, TriplineCommand root, CommandLine line, String... args) {
    line.setOut(streams.answers());
    line.setErr(streams.errors());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    Course course = new Course(streams, root);
    line.setParameterExceptionHandler(course);
    line.setExecutionExceptionHandler(course);
    line.setExecutionStrategy(course);
    int status;
    try {
      status = line.execute(args);
    } catch (Error e) {
      // Left to the virtual machine it would end in status 1, which says "rejected".
      status = failed(e, streams);
    }
    return streams.answers().checkError()
        ? failed(new OutputFailure("standard output", "could not be written"), streams)
        : status;
  }

  /** What becomes of a command line (a class, for lambdas of these types cannot be archived). */
  private record Course(Streams streams, TriplineCommand root)
      implements IExecutionStrategy, IParameterExceptionHandler, IExecutionExceptionHandler {
    @Override
    public int execute(ParseResult parsed) {
      return Main.execute(root, parsed);
    }

    @Override
    public int handleParseException(ParameterException e, String[] args) {
      return refused(e, streams);
    }

    @Override
    public int handleExecutionException(Exception e, CommandLine line, ParseResult parsed) {
      return failed(e, streams);
    }
  }

  private static int execute(TriplineCommand root, ParseResult parsed) {
    Logging.from(root.log());
    int code = new RunLast().execute(parsed);
    ParseResult last = parsed;
    while (last.hasSubcommand()) {
      last = last.subcommand();
    }
    Object result = last.commandSpec().commandLine().getExecutionResult();
    return result instanceof ExitStatus status ? status.code() : code;
  }

  private static int refused(ParameterException e, Streams streams) {
    String hint = "";
    if (e instanceof UnmatchedArgumentException unmatched
        && !unmatched.getSuggestions().isEmpty()) {
      hint = "; meant: " + String.join(", ", unmatched.getSuggestions()) + "?";
    } else if (e instanceof UnmatchedArgumentException && e.getCommandLine().getParent() == null) {
      hint = "; commands: " + String.join(", ", e.getCommandLine().getSubcommands().keySet());
    }
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    streams
        .errors()
        .println(
            "%s: %s%s (see %s --help)"
                .formatted(
                    command,
                    String.valueOf(e.getMessage())
                        .replaceAll("\\R\\s*", " ")
                        .replaceFirst(" is not an? (int|long)\\b", " is no whole number"),
                    hint,
                    command));
    return ExitStatus.USAGE.code();
  }

  private static int failed(Throwable e, Streams streams) {
    if (e instanceof InputFailure || e instanceof LinkFailure || e instanceof OutputFailure) {
      streams.errors().println(e.getMessage());
      return e instanceof InputFailure
          ? ExitStatus.INPUT.code()
          : e instanceof LinkFailure ? ExitStatus.LINK.code() : ExitStatus.OUTPUT.code();
    }
    streams
        .errors()
        .println("tripline: a fault of the program, no verdict: " + e + " (trace: --log debug)");
    LoggerFactory.getLogger(Main.class).debug("fault", e);
    return ExitStatus.FAULT.code();
  }
}
