package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tripline.Version;
import tripline.harness.command.Commands;
import tripline.harness.command.ExitStatus;
import tripline.harness.command.TriplineCommand;
import tripline.harness.failure.InputError;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.LinkFailure;
import tripline.harness.failure.OutputFailure;

class MainTest {
  private final StringWriter answers = new StringWriter();
  private final StringWriter errors = new StringWriter();

  @Test
  void versionIsAnAnswer() {
    assertThat(run("--version")).isZero();
    assertThat(answers).hasToString("tripline " + Version.TEXT + System.lineSeparator());
    assertThat(errors).hasToString("");
  }

  @Test
  void helpIsAnAnswerThatListsCommandsAndStatuses() {
    assertThat(run("--help")).isZero();
    assertThat(answers.toString())
        .contains("Usage: tripline", "--log=LEVEL", "scripted", "Exit status;", "undecided");
    assertThat(answers.toString().lines()).allMatch(line -> line.length() <= 80);
    assertThat(errors).hasToString("");
  }

  @Test
  void everyCommandHasHelpOfItsOwn() {
    assertThat(run("scripted", "--help")).isZero();
    assertThat(answers.toString()).contains("Usage: tripline scripted", "--log=LEVEL");
  }

  @Test
  void aWrongCommandLineIsOneLineAndStatus2() {
    assertThat(run("scriptde")).isEqualTo(2);
    assertThat(answers).hasToString("");
    assertThat(errors.toString().lines()).hasSize(1);
    assertThat(errors.toString()).contains("'scriptde'", "meant: scripted?", "tripline --help");
    assertThat(run("frob")).isEqualTo(2);
    assertThat(errors.toString()).contains("'frob'; commands: ", "scripted");
    assertThat(run()).isEqualTo(2);
    assertThat(run("--log", "loud", "scripted")).isEqualTo(2);
    assertThat(run("scripted", "--end")).isEqualTo(2);
    assertThat(errors.toString().lines()).hasSize(5);
  }

  @Test
  void aCommandsVerdictIsTheStatus() {
    assertThat(run("scripted", "--end=reject")).isEqualTo(1);
    assertThat(run("scripted", "--end=undecided")).isEqualTo(3);
    assertThat(answers.toString().lines()).containsExactly("an answer", "an answer");
  }

  @Test
  void everyErrorOfAnInputIsALineAndStatus4() {
    assertThat(run("scripted", "--end=input")).isEqualTo(4);
    assertThat(errors.toString().lines())
        .containsExactly(
            "job.toml:3:7: not a number", "job.toml:4: no such key", "b.csv: is empty");
  }

  @Test
  void aBrokenLinkIsStatus5AndALostAnswerStatus6() {
    assertThat(run("scripted", "--end=link")).isEqualTo(5);
    assertThat(run("scripted", "--end=output")).isEqualTo(6);
    assertThat(errors.toString().lines()).containsExactly("ttyX: unplugged", "r.pdf: disk full");
  }

  @Test
  void standardOutputThatCannotBeWrittenIsNotASuccess() {
    Streams full = new Streams(new PrintWriter(new FullDisk()), new PrintWriter(errors, true));
    assertThat(run(full, "scripted", "--end=accept")).isEqualTo(6);
    assertThat(errors.toString().lines()).containsExactly("standard output: could not be written");
  }

  @Test
  void aFaultIsOneLineWithoutATraceAndNeverLooksLikeAVerdict() {
    assertThat(run("scripted", "--end=fault")).isEqualTo(70);
    assertThat(run("scripted", "--end=error")).isEqualTo(70);
    assertThat(errors.toString().lines()).hasSize(2).allMatch(line -> line.contains("no verdict"));
  }

  @Test
  void onlyTheCommandNamedIsMade() {
    TriplineCommand root = new TriplineCommand();
    int all = Commands.commandLine(root).getSubcommands().size();
    Commands.commandLine(root)
        .getSubcommands()
        .keySet()
        .forEach(
            name ->
                assertThat(Commands.commandLine(root, name).getSubcommands())
                    .containsOnlyKeys(name));
    assertThat(Commands.commandLine(root, "no-such-command").getSubcommands()).hasSize(all);
  }

  private int run(String... args) {
    return run(new Streams(new PrintWriter(answers), new PrintWriter(errors, true)), args);
  }

  private static int run(Streams streams, String... args) {
    TriplineCommand root = new TriplineCommand();
    CommandLine line = new CommandLine(root.spec()).addSubcommand(new Scripted());
    return Main.run(streams, root, line, args);
  }

  /** Ends in every way a command can. */
  @Command(name = "scripted", description = "Ends as told.")
  static final class Scripted implements Callable<ExitStatus> {
    @Spec private CommandSpec spec;

    @Option(names = "--end", defaultValue = "accept")
    private String end;

    @Override
    public ExitStatus call() throws IOException {
      switch (end) {
        case "input" ->
            throw new InputFailure(
                List.of(
                    new InputError("job.toml", 3, 7, "not a number"),
                    new InputError("job.toml", 4, 0, "no such key"),
                    new InputError("b.csv", "is empty")));
        case "link" -> throw new LinkFailure("ttyX", "unplugged");
        case "output" -> throw new OutputFailure("r.pdf", "disk full");
        case "fault" -> throw new IOException("unforeseen");
        case "error" -> throw new StackOverflowError();
        default -> spec.commandLine().getOut().println("an answer");
      }
      return switch (end) {
        case "reject" -> ExitStatus.REJECTED;
        case "undecided" -> ExitStatus.UNDECIDED;
        default -> ExitStatus.ACCEPTED;
      };
    }
  }
}
