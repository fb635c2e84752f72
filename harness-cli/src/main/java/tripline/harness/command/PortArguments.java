package tripline.harness.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import tripline.harness.serial.BaudRate;

/** What the commands that speak with a logger are told of its port. */
final class PortArguments {
  @Option(
      names = "--port",
      paramLabel = "PORT",
      required = true,
      description = "Serial port of the logger; `tripline ports` lists those present.")
  private @Nullable String name;

  @Option(
      names = "--baud",
      paramLabel = "RATE",
      defaultValue = "115200",
      description = "Line rate (default: ${DEFAULT-VALUE}); over USB it mostly means nothing.")
  private int baud;

  String name() {
    if (name == null) {
      throw new IllegalStateException("called without its command line");
    }
    return name;
  }

  /** The rate; one that no hardware knows is the command line's fault. */
  BaudRate baud(CommandLine line) {
    try {
      return new BaudRate(baud);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(line, "--baud: " + e.getMessage());
    }
  }
}
