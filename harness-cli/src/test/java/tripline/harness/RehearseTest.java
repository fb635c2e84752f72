package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.RequiredProgram;
import tripline.harness.rehearse.script.LineReader;

class RehearseTest {
  private static final String JOB =
      Path.of(System.getProperty("tripline.root"), "recordings/motor-right/job.toml").toString();

  @TempDir private Path folder;

  private String link() {
    return folder.resolve("port").toString();
  }

  @Test
  void aScriptIsPlayedAndThePortIsTheFirstLine() throws IOException {
    RequiredProgram.need("socat", "-V");
    Path script = Files.writeString(folder.resolve("s.txt"), "# set it right\ncrank to 5\nwhere\n");
    CommandRun run =
        CommandRun.of(
            "rehearse", JOB, "--link", link(), "--script", script.toString(), "--speed", "100");
    assertThat(run.status()).isZero();
    assertThat(run.answers().lines().toList())
        .startsWith(link())
        .anyMatch(line -> line.startsWith("at 5.0"));
    assertThat(run.errors()).contains("crank to 5");
  }

  @ParameterizedTest
  @CsvSource({
    "--speed=0, 2, expected 0.1 to 100",
    "--speed=fast, 2, Invalid value",
    "--uptime=-1, 2, expected 0 to 1e9",
    "--baud=7, 2, expected 0 or at least 1200",
    "--script=none.txt, 4, none.txt: no such file",
    "none.toml, 4, none.toml"
  })
  void whatCannotBeIsOneLine(String argument, int status, String problem) {
    boolean sheet = argument.endsWith(".toml");
    CommandRun run = CommandRun.of("rehearse", sheet ? "--right" : JOB, argument, "--link", link());
    assertThat(run.status()).isEqualTo(status);
    assertThat(run.answers()).isEmpty();
    assertThat(run.errors().lines()).hasSize(1);
    assertThat(run.errors()).contains(problem);
    assertThat(folder.resolve("port")).doesNotExist();
  }

  @Test
  void everyWrongLineOfAScriptIsNamedBeforeAnythingMoves() throws IOException {
    Path script = Files.writeString(folder.resolve("s.txt"), "touch shut\nwait\nadjust x 1\n");
    CommandRun run =
        CommandRun.of("rehearse", JOB, "--link", link(), "--script", script.toString());
    assertThat(run.status()).isEqualTo(4);
    assertThat(run.errors().lines())
        .containsExactly(
            script + ":1: \"shut\", expected open or closed",
            script + ":2: the line ends, expected SECONDS",
            script + ":3: no cam \"x\", expected one of close, lift, half, drop, open");
  }

  @Test
  void aPortThatCannotBeMadeIsStatus5() throws IOException {
    RequiredProgram.need("socat", "-V");
    Files.writeString(folder.resolve("port"), "mine");
    CommandRun run = CommandRun.of("rehearse", JOB, "--link", link());
    assertThat(run.status()).isEqualTo(5);
    assertThat(run.errors().lines()).hasSize(1);
    assertThat(folder.resolve("port")).hasContent("mine");
  }

  /** What help shows as a script is one. */
  @Test
  void theScriptThatHelpShowsCanBePlayed() throws Exception {
    String help = CommandRun.of("rehearse", "--help").answers();
    List<String> shown =
        help.substring(help.indexOf("A script, for one"))
            .lines()
            .skip(1)
            .filter(l -> !l.isBlank())
            .toList();
    assertThat(shown).hasSize(11);
    LineReader reader = new LineReader(List.of());
    for (String line : shown) {
      assertThat(reader.read(line).isPresent()).as(line).isNotEqualTo(line.contains("#"));
    }
  }

  /** Help is the only place where somebody learns the lines. */
  @Test
  void helpTeachesTheLines() {
    CommandRun run = CommandRun.of("rehearse", "--help");
    assertThat(run.answers()).contains("touch open|closed", "errors RATE", "await start|stop");
    assertThat(run.answers().lines()).allMatch(line -> line.length() <= 80);
  }
}
