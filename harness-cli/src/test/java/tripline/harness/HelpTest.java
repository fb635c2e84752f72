package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Help of every command. That no command ends with a status it does not list, {@link CommandRun}
 * holds in every test; that it ends with each it does list is shown here.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HelpTest {
  private static final String FULL_DISK = "> full disk";

  /** What a fault of the program would end with, and what only a logger at the port can show. */
  private static final Map<String, Set<String>> NOT_SHOWN_HERE =
      Map.of(
          "record", Set.of("0"),
          "watch", Set.of("0", "1", "3"),
          "conform", Set.of("0", "1", "3", "6"),
          "rehearse", Set.of("0", "6"),
          "ports", Set.of("6"));

  @TempDir private static Path folder;
  private final Map<String, Map<Integer, List<String>>> examples = new TreeMap<>();

  static Set<String> commands() {
    return CommandRun.commands();
  }

  private static String file(String name) {
    return folder.resolve(name).toString();
  }

  private void show(String command, int status, String... arguments) {
    examples.computeIfAbsent(command, c -> new TreeMap<>()).put(status, List.of(arguments));
  }

  @BeforeAll
  void examples() throws IOException {
    String job =
        Files.copy(Path.of("src/test/resources/sheets/hand.toml"), folder.resolve("j.toml"))
            .toString();
    Files.createDirectory(folder.resolve("empty"));
    Files.createDirectory(folder.resolve("results"));
    Files.writeString(folder.resolve("right.csv"), HandStrokes.RIGHT.csv());
    Files.writeString(folder.resolve("wrong.csv"), HandStrokes.RIGHT.closedBackoff(1.2).csv());
    Files.writeString(
        folder.resolve("part.csv"),
        HandStrokes.RIGHT.csv().lines().limit(150).reduce("", (a, b) -> a + b + "\n"));
    for (String name : List.of("right", "wrong", "part")) {
      String result = file("results/" + name + ".json");
      CommandRun.of("check", job, file(name + ".csv"), "--quiet", "--json", result);
    }
    String right = file("results/right.json");
    String wrong = file("results/wrong.json");
    String none = file("none");
    String key = file("seal.key");
    for (String command : List.of("check", "accept")) {
      show(command, 1, job, file("wrong.csv"));
      show(command, 2);
      show(command, 3, job, file("part.csv"));
      show(command, 4, job, none);
      show(command, 6, job, file("right.csv"), FULL_DISK);
    }
    show("check", 0, job, file("right.csv"));
    String acceptance = "../recordings/accept-repeats/";
    show("accept", 0, acceptance + "job.toml", acceptance + "hand.csv", acceptance + "motor.csv");
    show("compare", 0, right, right);
    show("compare", 1, right, wrong);
    show("compare", 2);
    show("compare", 3, right, file("results/part.json"));
    show("compare", 4, right, none);
    show("compare", 6, right, right, FULL_DISK);
    show("record", 2);
    show("record", 4, "--port", none, none, file("new.bin"));
    show("record", 5, "--port", none, job, file("new.bin"));
    show("record", 6, "--port", none, job, job);
    show("watch", 2);
    show("watch", 4, "--port", none, none);
    show("watch", 5, "--port", none, job);
    show("watch", 6, "--port", none, job, "--capture", job);
    show("rehearse", 2, "--speed", "0");
    show("rehearse", 4, none);
    show("rehearse", 5, job, "--link", job);
    show("ports", 0);
    show("ports", 2, "x");
    show("conform", 2);
    show("conform", 5, "--port", none);
    show("chart", 0, job);
    show("chart", 2);
    show("chart", 4, none);
    show("chart", 6, job, FULL_DISK);
    show("convert", 0, file("right.csv"), file("right.bin"));
    show("convert", 2);
    show("convert", 4, none, file("none.bin"));
    show("convert", 6, file("right.csv"), file("wrong.csv"));
    show("summary", 0, file("results"));
    show("summary", 2);
    show("summary", 4, file("empty"));
    show("summary", 6, file("results"), FULL_DISK);
    show("seal", 0, "--key", key, right);
    show("seal", 2);
    show("seal", 4, "--key", key, none);
    Files.createDirectory(folder.resolve("results/wrong.json.seal"));
    show("seal", 6, "--key", key, wrong);
    show("verify-seal", 0, "--key", key, right);
    show("verify-seal", 1, "--signer", "0000-0000", right);
    show("verify-seal", 2);
    show("verify-seal", 3, "--key", file("other.key"), right);
    show("verify-seal", 4, none);
    show("verify-seal", 6, right, FULL_DISK);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void listsTheStatusesThatTheCommandEndsWithAndNoOther(String command) {
    Map<Integer, List<String>> lines = examples.getOrDefault(command, Map.of());
    lines.forEach(
        (status, arguments) ->
            assertThat(run(command, arguments)).as(command + arguments).isEqualTo(status));
    Set<String> shown = new TreeSet<>(NOT_SHOWN_HERE.getOrDefault(command, Set.of()));
    lines.keySet().forEach(status -> shown.add(status.toString()));
    shown.add("70");
    assertThat(CommandRun.listed(command)).containsExactlyInAnyOrderElementsOf(shown);
  }

  private static int run(String command, List<String> arguments) {
    boolean full = arguments.contains(FULL_DISK);
    List<String> line = new ArrayList<>(List.of(command));
    line.addAll(arguments);
    line.remove(FULL_DISK);
    String[] args = line.toArray(String[]::new);
    PrintWriter errors = new PrintWriter(new StringWriter());
    return full
        ? Main.run(new Streams(new PrintWriter(new FullDisk()), errors), args)
        : CommandRun.of(args).status();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void fitsAScreenAndSaysWhatAStatusMeansHere(String command) {
    String help = CommandRun.of(command, "--help").answers();
    assertThat(help).contains("\nExit status");
    assertThat(help.lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void theListOfCommandsIsMadeOfSentences() {
    String help = CommandRun.of("--help").answers();
    String list = help.substring(help.indexOf("Commands:\n") + 10, help.indexOf("\nExit status"));
    List<String> items = List.of(list.replaceAll("\n {6,}", " ").split("\n"));
    assertThat(items).hasSameSizeAs(CommandRun.commands());
    assertThat(items).allMatch(item -> item.matches(" +[a-z-]+ +[A-Z].*[.?]"));
  }
}
