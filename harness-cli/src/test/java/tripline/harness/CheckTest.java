package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as scripts see it: status, standard output, standard error, result file. */
class CheckTest {
  private static final String JOB = "src/test/resources/sheets/hand.toml";

  private static final String FINE_CASE = "../recordings/right-fine/";
  private static final String MOTOR_CASE = "../recordings/motor-right/";

  @TempDir Path folder;

  @Test
  void aRightSettingIsAcceptedAndTheResultFileSaysWhere() throws IOException {
    Path json = folder.resolve("r.json");
    CommandRun run =
        CommandRun.of(
            "check", JOB, file("a.csv", HandStrokes.RIGHT.csv()), "--json", json.toString());
    assertThat(run.errors()).isEmpty();
    assertThat(run.answers()).startsWith("ACCEPTED");
    assertThat(run.status()).isZero();
    JsonNode result = new ObjectMapper().readTree(json.toFile());
    assertThat(result.at("/decision").asText()).isEqualTo("accept");
    assertThat(result.at("/recordings/0/started").asText()).isEqualTo("2026-03-02T08:14:05Z");
    assertThat(result.at("/ends/closed/backoff/value").asDouble()).isCloseTo(0.5, within(0.02));
    assertThat(result.at("/ends/open/backoff/value").asDouble()).isCloseTo(0.6, within(0.02));
    assertThat(folder.toFile().list()).containsExactlyInAnyOrder("a.csv", "r.json");
  }

  @Test
  void aCamOutOfPlaceIsRejected() throws IOException {
    String wrong = file("a.csv", HandStrokes.RIGHT.closedBackoff(1.2).csv());
    CommandRun run = CommandRun.of("check", JOB, wrong);
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.answers()).startsWith("REJECTED");
  }

  @Test
  void whatWasNotExercisedIsUndecided() throws IOException {
    String csv = HandStrokes.RIGHT.csv();
    String beginning = csv.lines().limit(150).reduce("", (a, b) -> a + b + "\n");
    CommandRun run = CommandRun.of("check", JOB, file("a.csv", beginning), "--quiet");
    assertThat(run).isEqualTo(new CommandRun(3, "", ""));
  }

  @Test
  void quietPrintsNothingAndDashPrintsNothingElse() throws IOException {
    String right = file("a.csv", HandStrokes.RIGHT.csv());
    assertThat(CommandRun.of("check", "--quiet", JOB, right)).isEqualTo(new CommandRun(0, "", ""));
    CommandRun dash = CommandRun.of("check", JOB, right, "--json", "-");
    CommandRun both = CommandRun.of("check", "--quiet", JOB, right, "--json", "-");
    assertThat(dash).isEqualTo(both);
    assertThat(new ObjectMapper().readTree(dash.answers()).at("/format").asInt()).isEqualTo(1);
  }

  @Test
  void noAnswerIsWrittenOverWhatItWasWorkedOutFrom() throws IOException {
    String csv = HandStrokes.RIGHT.csv();
    String recording = file("a.csv", csv);
    Path link = Files.createSymbolicLink(folder.resolve("b.html"), Path.of(recording));
    for (String[] option :
        List.of(
            new String[] {"--json", recording},
            new String[] {"--json", folder + "/./a.csv"},
            new String[] {"--report", link.toString()})) {
      CommandRun run = CommandRun.of("check", JOB, recording, option[0], option[1]);
      assertThat(run.status()).isEqualTo(2);
      assertThat(run.answers()).isEmpty();
      assertThat(run.errors()).contains("is read by this command and would be written over");
      assertThat(Path.of(recording)).hasContent(csv);
    }
    String result = folder.resolve("r.json").toString();
    assertThat(CommandRun.of("check", JOB, recording, "--json", result).status()).isZero();
    String before = Files.readString(Path.of(result));
    assertThat(CommandRun.of("compare", result, result, "--json", result).status()).isEqualTo(2);
    assertThat(Path.of(result)).hasContent(before);
  }

  @Test
  void aWordForANumberIsToldInPlainWords() throws IOException {
    CommandRun run = CommandRun.of("check", JOB, "a.csv", "--threads", "two");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.errors()).contains("'two' is no whole number").hasLineCount(1);
  }

  @Test
  void aCompressedRecordingIsToldAsOne() throws IOException {
    Path packed = folder.resolve("a.csv");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      out.write(HandStrokes.RIGHT.csv().getBytes(StandardCharsets.UTF_8));
    }
    assertThat(CommandRun.of("check", JOB, packed.toString()))
        .isEqualTo(
            new CommandRun(
                4,
                "",
                packed
                    + ": is compressed (gzip), expected the recording itself: unpack it first\n"));
  }

  @Test
  void anAnswerThatHasNoFolderIsNamedAsTheUserDid() throws IOException {
    String nowhere = folder.resolve("none").toString();
    String right = file("a.csv", HandStrokes.RIGHT.csv());
    for (String[] option :
        List.of(
            new String[] {"--json", "r.json"},
            new String[] {"--report", "r.html"},
            new String[] {"--report", "r.pdf"})) {
      String answer = nowhere + "/" + option[1];
      CommandRun run = CommandRun.of("check", "--quiet", JOB, right, option[0], answer);
      assertThat(run)
          .isEqualTo(
              new CommandRun(6, "", answer + ": could not be written: there is no such folder\n"));
    }
  }

  @Test
  void sheetAndRecordingExchangedAreToldInOneLine() throws IOException {
    String recording = file("a.csv", HandStrokes.RIGHT.csv());
    assertThat(CommandRun.of("check", recording, JOB))
        .isEqualTo(
            new CommandRun(
                4,
                "",
                recording + ": is a recording, expected a job sheet: the sheet stands first\n"));
  }

  @Test
  void whatElseIsGivenForASheetIsToldInOneLineWhateverItsSize() throws IOException {
    String right = file("a.csv", HandStrokes.RIGHT.csv());
    String large = file("large.csv", HandStrokes.RIGHT.rate(1000).csv());
    String capture = folder.resolve("a.bin").toString();
    String result = folder.resolve("a.json").toString();
    assertThat(Files.size(Path.of(large))).isGreaterThan(1 << 20);
    assertThat(CommandRun.of("convert", right, capture).status()).isZero();
    assertThat(CommandRun.of("check", JOB, right, "--quiet", "--json", result).status()).isZero();
    for (String given : List.of(large, capture, result)) {
      CommandRun run = CommandRun.of("check", given, right);
      assertThat(run.status()).isEqualTo(4);
      assertThat(run.errors())
          .startsWith(given + (given.equals(result) ? ": is JSON" : ": is a recording"))
          .endsWith("the sheet stands first\n")
          .hasLineCount(1);
    }
  }

  @Test
  void threadsChangeNothing() throws IOException {
    List<String> files =
        List.of(
            file("a.csv", HandStrokes.RIGHT.csv()),
            file("b.csv", HandStrokes.RIGHT.rate(333).csv()),
            file("c.csv", HandStrokes.RIGHT.closedBackoff(0.52).csv()));
    CommandRun one = check(files, "--json", "-");
    assertThat(check(files, "--json", "-", "--threads", "3")).isEqualTo(one);
    assertThat(new ObjectMapper().readTree(one.answers()).at("/recordings")).hasSize(3);
  }

  @Test
  void theFirstFileThatCannotBeUsedIsNamedWhateverTheThreads() throws IOException {
    List<String> files =
        List.of(
            file("a.csv", HandStrokes.RIGHT.csv()),
            file("b.csv", "time,position,k1,k2,k3\n0,1,1,0,x\n"),
            folder.resolve("none.csv").toString());
    CommandRun one = check(files);
    assertThat(one.status()).isEqualTo(4);
    assertThat(one.answers()).isEmpty();
    assertThat(one.errors().lines()).hasSize(1);
    assertThat(one.errors()).startsWith(files.get(1) + ":2:9: ");
    assertThat(check(files, "--threads", "2")).isEqualTo(one);
  }

  @Test
  void anEarlierResultBringsTheStops() throws IOException {
    String marked = file("a.csv", HandStrokes.RIGHT.csv());
    Path before = folder.resolve("before.json");
    CommandRun.of("check", JOB, marked, "--json", before.toString());
    String motor =
        file(
            "b.csv",
            HandStrokes.RIGHT
                .forgetful()
                .csv()
                .replace("# drive: hand", "# drive: motor\n# zero: kept"));
    CommandRun alone = CommandRun.of("check", JOB, motor, "--json", "-");
    assertThat(alone.status()).isEqualTo(3);
    CommandRun with =
        CommandRun.of("check", JOB, motor, "--json", "-", "--reference", before.toString());
    JsonNode result = new ObjectMapper().readTree(with.answers());
    assertThat(result.at("/travel/closed_stop/source").asText()).isEqualTo("reference");
    assertThat(result.at("/reference/file").asText()).isEqualTo(before.toString());
    assertThat(result.at("/reference/sha256").asText()).hasSize(64);
    assertThat(result.at("/ends/closed/backoff/value").asDouble()).isCloseTo(0.5, within(0.03));
  }

  @Test
  void whatTheUserShouldKnowIsANoticeWithTheFilesName() throws IOException {
    String twice = HandStrokes.RIGHT.table(0).replaceFirst("[^\n]*\n", "");
    String table =
        (HandStrokes.RIGHT.table(0) + twice).replace("\n", ",21\n").replace("mark,21", "mark,temp");
    String name = file("a.csv", "# tripline-recording: 1\n" + table);
    CommandRun run = CommandRun.of("check", JOB, name, "--quiet", "--json", "-");
    assertThat(run.errors().lines())
        .allMatch(line -> line.length() <= 80 || !line.strip().contains(" "));
    assertThat(run.notices())
        .hasSize(3)
        .allMatch(line -> line.startsWith(name + ": "))
        .anyMatch(line -> line.contains("columns that nobody asks for: temp"))
        .anyMatch(line -> line.contains("time steps back by 55."))
        .anyMatch(line -> line.contains("taken as by hand: a stop was marked"));
    assertThat(new ObjectMapper().readTree(run.answers()).at("/recordings")).hasSize(2);
  }

  /** Nobody says what drove the valve, but the contactors do. */
  @Test
  void contactorsTellWhatDroveTheValve() throws IOException {
    List<String> stated = new ArrayList<>(List.of("check", MOTOR_CASE + "job.toml"));
    List<String> unstated = new ArrayList<>(stated);
    for (String name : List.of("hand.csv", "open.csv", "close.csv")) {
      String csv = Files.readString(Path.of(MOTOR_CASE + name));
      stated.add(file(name, csv));
      unstated.add(file("un" + name, csv.replaceFirst("# drive: .*\n", "")));
    }
    CommandRun with = CommandRun.of(stated.toArray(String[]::new));
    CommandRun without = CommandRun.of(unstated.toArray(String[]::new));
    assertThat(without.answers()).isEqualTo(with.answers()).contains("strokes by hand in 1");
    assertThat(without.status()).isEqualTo(with.status()).isZero();
    assertThat(without.notices())
        .singleElement()
        .asString()
        .contains("unhand.csv", "taken as by hand: no contactor was in");
  }

  /** Nobody says what drove the valve, and the sheet has no contactors: a stop is felt by hand. */
  @Test
  void whoMarksAStopHasHisHandOnTheWheel() throws IOException {
    String csv = Files.readString(Path.of(FINE_CASE + "hand.csv"));
    String unstated = file("unstated.csv", csv.replaceFirst("# drive: .*\n", ""));
    CommandRun run = CommandRun.of("check", FINE_CASE + "job.toml", unstated);
    assertThat(run.status()).as(run.answers()).isZero();
    assertThat(run.notices())
        .singleElement()
        .asString()
        .endsWith("taken as by hand: a stop was marked");
  }

  /** What was not exercised is undecided, wherever the recording ends. */
  @Test
  void aStrokeThatWasCutShortRejectsNoCam() throws IOException {
    List<String> lines = Files.readAllLines(Path.of(FINE_CASE + "hand.csv"));
    for (int percent = 20; percent < 100; percent += 5) {
      List<String> kept = lines.subList(0, lines.size() * percent / 100);
      String cut = file("cut" + percent + ".csv", String.join("\n", kept) + "\n");
      CommandRun run = CommandRun.of("check", FINE_CASE + "job.toml", cut);
      assertThat(run.status()).as("%d %%: %s", percent, run.answers()).isIn(0, 3);
    }
  }

  @Test
  void recordingsOutOfOrderOrGivenTwiceAreNamed() throws IOException {
    String noon = HandStrokes.RIGHT.csv().replace("T08:14:05Z", "T12:00:00Z");
    String first = file("a.csv", HandStrokes.RIGHT.rate(333).csv());
    String second = file("b.csv", noon);
    String again = file("c.csv", noon);
    assertThat(check(List.of(first, second), "--quiet").errors()).isEmpty();
    assertThat(check(List.of(second, first, again), "--quiet").notices())
        .containsExactly(
            first
                + ": was started before "
                + second
                + ", expected recordings in the order they were made",
            again + ": holds the same recording as " + second + ": its strokes are counted twice");
  }

  @Test
  void aTargetThatNobodyStatedIsSaidWithTheVerdict() throws IOException {
    String sheet = Files.readString(Path.of(JOB)).replaceFirst("backoff = 0.5\n", "");
    String job = file("job.toml", sheet);
    CommandRun run = CommandRun.of("check", "--quiet", job, file("a.csv", HandStrokes.RIGHT.csv()));
    assertThat(run.status()).isZero();
    assertThat(run.errors().lines())
        .containsExactly(
            job + ":10:1: ends.closed is not stated in full, taken as usual: backoff 0.5");
  }

  @Test
  void aWrongCommandLineIsStatus2() throws IOException {
    String right = file("a.csv", HandStrokes.RIGHT.csv());
    assertThat(CommandRun.of("check", JOB).status()).isEqualTo(2);
    assertThat(CommandRun.of("check").status()).isEqualTo(2);
    assertThat(CommandRun.of("check", JOB, right, "--threads", "0").status()).isEqualTo(2);
    assertThat(CommandRun.of("check", JOB, right, "--threads", "many").status()).isEqualTo(2);
    assertThat(CommandRun.of("check", JOB, right, "--jsn", "x").status()).isEqualTo(2);
  }

  @Test
  void aResultThatCannotBeWrittenIsStatus6AndLeavesNothing() throws IOException {
    String right = file("a.csv", HandStrokes.RIGHT.csv());
    String nowhere = folder.resolve("no/such/folder.json").toString();
    CommandRun run = CommandRun.of("check", JOB, right, "--quiet", "--json", nowhere);
    assertThat(run.status()).isEqualTo(6);
    assertThat(run.errors().lines()).hasSize(1);
    assertThat(CommandRun.of("check", JOB, right, "--quiet", "--json", folder.toString()).status())
        .isEqualTo(6);
  }

  private static CommandRun check(List<String> files, String... more) {
    List<String> line = new java.util.ArrayList<>(List.of("check", JOB));
    line.addAll(files);
    line.addAll(List.of(more));
    return CommandRun.of(line.toArray(new String[0]));
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }
}
