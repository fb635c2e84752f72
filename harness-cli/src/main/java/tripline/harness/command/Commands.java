package tripline.harness.command;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;

/** All commands, in the order help lists them. A new command is one line here. */
public final class Commands {
  private static final Map<String, Supplier<Object>> BY_NAME = byName();

  private Commands() {}

  private static Map<String, Supplier<Object>> byName() {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("check", () -> new CheckCommand().spec());
    commands.put("accept", () -> new AcceptCommand().spec());
    commands.put("compare", CompareCommand::new);
    commands.put("record", RecordCommand::new);
    commands.put("watch", WatchCommand::new);
    commands.put("rehearse", RehearseCommand::new);
    commands.put("ports", PortsCommand::new);
    commands.put("conform", ConformCommand::new);
    commands.put("chart", ChartCommand::new);
    commands.put("convert", ConvertCommand::new);
    commands.put("summary", SummaryCommand::new);
    commands.put("seal", SealCommand::new);
    commands.put("verify-seal", VerifySealCommand::new);
    return commands;
  }

  /**
   * A command line that understands the arguments given.
   *
   * <p>Inspecting a command's annotations costs milliseconds, so where the first argument names a
   * command only that one is made; otherwise all are, for help and for suggestions.
   */
  public static CommandLine commandLine(TriplineCommand root, String... args) {
    CommandLine line = new CommandLine(root.spec());
    String first = args.length == 0 ? "" : args[0];
    BY_NAME.forEach(
        (name, command) -> {
          if (name.equals(first) || !BY_NAME.containsKey(first)) {
            CommandLine made = new CommandLine(command.get());
            line.addSubcommand(name, made);
            Endings.of(name).show(made.getCommandSpec().usageMessage());
          }
        });
    return line;
  }
}
