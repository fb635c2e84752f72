package tripline.harness.rehearse.script;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.harness.failure.InputFailure;
import tripline.job.End;
import tripline.link.MarkKind;

class LineReaderTest {
  /** First words of a line of the help: {@code " verb"}, or {@code " verb, verb"}. */
  private static final Pattern VERBS =
      Pattern.compile("(?:^ {2}|(?<=^ {2}[a-z]{1,9}, ))([a-z]+)\\b");

  private final LineReader reader = new LineReader(List.of("close", "open limit"));
  @TempDir private Path folder;

  private Action read(String line) throws BadLine {
    return reader.read(line).orElseThrow();
  }

  @Test
  void everyLineOfTheHelpIsUnderstood() throws BadLine {
    OptionalDouble none = OptionalDouble.empty();
    assertThat(read("crank open 2.5 at 0.6"))
        .isEqualTo(new Action.Crank(End.OPEN, OptionalDouble.of(2.5), OptionalDouble.of(0.6)));
    assertThat(read("crank close")).isEqualTo(new Action.Crank(End.CLOSED, none, none));
    assertThat(read("crank to 5 at 1")).isEqualTo(new Action.CrankTo(5, OptionalDouble.of(1)));
    assertThat(read(" touch  closed # no comment here ".replace("# no comment here", "")))
        .isEqualTo(new Action.Crank(End.CLOSED, none, none));
    assertThat(read("run open")).isEqualTo(new Action.Run(End.OPEN));
    assertThat(read("STOP")).isEqualTo(new Action.Halt());
    assertThat(read("adjust close -0.25")).isEqualTo(new Action.Adjust("close", -0.25));
    assertThat(read("set \"open limit\"")).isEqualTo(new Action.SetCam("open limit"));
    assertThat(read("press note gland  leaks"))
        .isEqualTo(new Action.Press(MarkKind.NOTE, "gland leaks"));
    assertThat(read("press closed-stop")).isEqualTo(new Action.Press(MarkKind.CLOSED_STOP, ""));
    assertThat(read("wait 1.5")).isEqualTo(new Action.Pause(1.5));
    assertThat(read("await stop")).isEqualTo(new Action.Await(Action.Host.STOP));
    assertThat(read("after 3 unplug")).isEqualTo(new Action.Later(3, new Action.Unplug()));
    assertThat(read("errors 1e-4")).isEqualTo(new Action.BitErrors(1e-4));
    assertThat(read("clock -2")).isEqualTo(new Action.StepClock(-2));
    assertThat(
            List.of(
                read("plug"),
                read("stall 2"),
                read("lose 3"),
                read("overrun 4"),
                read("restart"),
                read("where"),
                read("truth"),
                read("help"),
                read("quit")))
        .doesNotHaveDuplicates();
    assertThat(reader.read("  # a comment")).isEmpty();
    assertThat(reader.read("")).isEmpty();
  }

  /** Whatever stands first on a line of the help is a word the reader knows. */
  @Test
  void theHelpNamesNoWordThatIsNone() {
    int verbs = 0;
    for (String line : Grammar.TEXT.lines().toList()) {
      assertThat(line.length()).isLessThanOrEqualTo(80);
      for (String verb : VERBS.matcher(line).results().map(m -> m.group(1)).toList()) {
        assertThatThrownBy(() -> reader.read(verb + " \u0001 \u0001 \u0001"))
            .isInstanceOf(BadLine.class)
            .hasMessageNotContaining("no word of this");
        verbs++;
      }
    }
    assertThat(verbs).isGreaterThan(20);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "crank|the line ends, expected open or closed",
        "crank up|\"up\", expected open or closed",
        "crank open fast|TURNS is \"fast\", expected a number from 0 to 10000",
        "crank open 1 at 9|RATE is \"9\", expected a number from 0.01 to 5",
        "crank open NaN|TURNS is \"NaN\", expected a number from 0 to 10000",
        "run open 3|\"3\" is too much, expected the end of the line",
        "adjust lift 1|no cam \"lift\", expected one of close, open limit",
        "press stop|\"stop\", expected closed-stop, open-stop, adjusted or note",
        "lose 1.5|N is not whole",
        "after 2|the line ends, expected what to do then",
        "after 2 wait 1|to wait later makes no sense, expected something to do",
        "await help|\"help\", expected start or stop",
        "jump|\"jump\" is no word of this, try help",
      })
  void whatSaysNothingIsRefusedWithWhatWasExpected(String line, String problem) {
    assertThatThrownBy(() -> reader.read(line)).isInstanceOf(BadLine.class).hasMessage(problem);
  }

  @Test
  void aScriptIsReadWholeAndEveryWrongLineNamed() throws IOException {
    Path file = Files.writeString(folder.resolve("s"), "touch closed\njump\n\n# x\nwait\n");
    assertThatThrownBy(() -> ScriptFile.read(file, reader))
        .isInstanceOf(InputFailure.class)
        .hasMessage(
            "%s:2: \"jump\" is no word of this, try help\n%s:5: the line ends, expected SECONDS"
                .formatted(file, file));
    Path good = Files.writeString(folder.resolve("good"), "# first\n touch closed \nquit");
    assertThat(ScriptFile.read(good, reader).stream().map(ScriptLine::text))
        .containsExactly("touch closed", "quit");
  }

  @ParameterizedTest
  @ValueSource(strings = {"missing", ".", "binary"})
  void aScriptThatCannotBeReadIsOneLine(String name) throws IOException {
    Files.write(folder.resolve("binary"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
    assertThatThrownBy(() -> ScriptFile.read(folder.resolve(name), reader))
        .isInstanceOf(InputFailure.class)
        .hasMessageStartingWith(folder.toString())
        .hasMessageNotContaining("\n");
  }
}
