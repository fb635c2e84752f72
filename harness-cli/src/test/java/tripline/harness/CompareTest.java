package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tripline.harness.resultfile.Spoilt;

/** The command as scripts see it: status, standard output, standard error. */
class CompareTest {
  private static final String JOB = "src/test/resources/sheets/hand.toml";
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path folder;
  private static String before;

  @BeforeAll
  static void anEarlierResult() throws IOException {
    before = result("before.json", HandStrokes.RIGHT);
  }

  private static String result(String name, HandStrokes strokes) throws IOException {
    Path recording = Files.writeString(folder.resolve(name + ".csv"), strokes.csv());
    String file = folder.resolve(name).toString();
    CommandRun.of("check", JOB, recording.toString(), "--quiet", "--json", file);
    return file;
  }

  private String edited(String name, Consumer<ObjectNode> edit) throws IOException {
    ObjectNode root = (ObjectNode) JSON.readTree(Path.of(before).toFile());
    edit.accept(root);
    return Files.writeString(folder.resolve(name), root.toString()).toString();
  }

  @Test
  void whatMovedIsNamedAndIsStatus1() throws IOException {
    String after = result("after.json", HandStrokes.RIGHT.closedBackoff(0.9));
    CommandRun run = CommandRun.of("compare", before, after);
    assertThat(run.errors()).isEmpty();
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.answers().lines().findFirst().orElseThrow())
        .startsWith("MOVED         CW-114   1 of ")
        .contains(" trip points moved: close 0.4");
    assertThat(run.answers().lines()).allMatch(line -> line.length() <= 79);
  }

  @Test
  void nothingMovedIsStatus0AndTheSameFileTwiceSaysSo() throws IOException {
    String after = result("after.json", HandStrokes.RIGHT.rate(333));
    assertThat(CommandRun.of("compare", before, after).status()).isZero();
    CommandRun same = CommandRun.of("compare", before, before);
    assertThat(same.status()).isZero();
    assertThat(same.answers())
        .startsWith("NO MOVE SEEN  CW-114   none of ")
        .contains("Both are the same result: nothing can have moved.");
  }

  @Test
  void whatIsNotKnownInBothIsStatus3AndNeverZero() throws IOException {
    String part = HandStrokes.RIGHT.csv().lines().limit(150).reduce("", (a, b) -> a + b + "\n");
    Path recording = Files.writeString(folder.resolve("part.csv"), part);
    String after = folder.resolve("after.json").toString();
    CommandRun.of("check", JOB, recording.toString(), "--quiet", "--json", after);
    CommandRun run = CommandRun.of("compare", before, after, "--json", "-");
    assertThat(run.status()).isEqualTo(3);
    JsonNode answer = JSON.readTree(run.answers());
    assertThat(answer.at("/answer").asText()).isEqualTo("not-known");
    assertThat(answer.at("/ends/open/backoff/after").isNull()).isTrue();
    assertThat(answer.at("/ends/open/backoff/moved").isNull()).isTrue();
    assertThat(answer.at("/ends/open/backoff/seen").asText()).isEqualTo("not-known");
  }

  @Test
  void oneResultWithAnAdjustmentIsComparedAsFoundAndAsLeft() {
    String adjusted = folder.resolve("adjusted.json").toString();
    CommandRun.of(
        "check",
        "../recordings/adjusted/job.toml",
        "../recordings/adjusted/hand.csv",
        "--quiet",
        "--json",
        adjusted);
    CommandRun run = CommandRun.of("compare", adjusted);
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.answers()).contains("1 of 5 trip points moved: close 0.33").contains("as found");
    // Its judged setting, then its first: the same movement the other way round.
    assertThat(CommandRun.of("compare", adjusted, adjusted, "--as-found").status()).isEqualTo(1);
    CommandRun one = CommandRun.of("compare", before);
    assertThat(one.status()).isEqualTo(4);
    assertThat(one.errors()).startsWith(before + ": tells of one setting only");
    assertThat(one.answers()).isEmpty();
  }

  @Test
  void theJsonHasItsKeysInTheirOrder() throws IOException {
    CommandRun run = CommandRun.of("compare", before, before, "--json", "-");
    JsonNode answer = JSON.readTree(run.answers());
    keys(
        answer,
        "format tripline answer tag before after trip_family figure_family cams contacts ends travel"
            + " together sheet_changed sheet recorded_backward notes");
    keys(answer.at("/before"), "file sha256 setting as_found started decision job_sha256 datum");
    keys(
        answer.at("/cams/0"),
        "cam edge from contact before after moved against_others seen target tolerance decision"
            + " differential");
    keys(answer.at("/cams/0/moved"), "value u u95 chance parts");
    keys(
        answer.at("/contacts/0"),
        "contact cam edge direction strokes_before strokes_after turned before after moved seen");
    keys(answer.at("/ends/closed"), "backoff coast margin stopped_by decision");
    keys(answer.at("/travel"), "span lost_motion");
    Path file = folder.resolve("answer.json");
    CommandRun quiet = CommandRun.of("compare", before, before, "--quiet", "--json", "" + file);
    assertThat(quiet).isEqualTo(new CommandRun(0, "", ""));
    assertThat(Files.readString(file)).isEqualTo(run.answers());
  }

  private static void keys(JsonNode object, String expected) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    assertThat(names).isEqualTo(List.of(expected.split(" ")));
  }

  @Test
  void incompatibleResultsAreRefusedInOneLineThatNamesTheFile() throws IOException {
    refused(
        edited("tag.json", r -> ((ObjectNode) r.at("/job")).put("tag", "FW-\u202e207")),
        "is a result of \"FW-\ufffd207\", expected one of \"CW-114\"");
    refused(
        edited("unit.json", r -> ((ObjectNode) r.at("/travel/sensor")).put("turns_per_unit", 0.5)),
        "0.5 turns per unit of reading, expected 1.0");
    refused(
        edited("side.json", r -> ((ObjectNode) r.at("/travel/sensor")).put("side", "drive")),
        "on the drive side, expected the handwheel side");
    refused(edited("format.json", r -> r.put("format", 2)), "format 2, expected 1");
    refused(
        edited("u.json", r -> ((ObjectNode) r.at("/contacts/0/trips/0")).put("u", 1)),
        "contacts[0].trips[0] has parts that do not make up its u");
    refused(
        edited("nan.json", r -> ((ObjectNode) r.at("/contacts/0/trips/0")).put("u95", 1e300)),
        "contacts[0].trips[0].u95 is too large a number");
    refused(
        edited("old.json", r -> ((ObjectNode) r.at("/contacts/0")).remove("trips")),
        "contacts[0].trips is missing, expected a list");
    refused(folder.resolve("none.json").toString(), "no such file");
    refused(folder.toString(), "is a folder");
    refused(Files.writeString(folder.resolve("empty.json"), "").toString(), "is no result file");
    refused(
        Files.writeString(folder.resolve("deep.json"), "[".repeat(100_000)).toString(), "not JSON");
  }

  private void refused(String after, String says) {
    CommandRun run = CommandRun.of("compare", before, after);
    assertThat(run.status()).as(run.errors()).isEqualTo(4);
    assertThat(run.errors().lines()).hasSize(1);
    assertThat(run.errors()).startsWith(after).contains(says);
    assertThat(run.answers()).isEmpty();
  }

  @Test
  void unknownKeysAreNobodysBusiness() throws IOException {
    String more =
        edited(
            "more.json",
            r -> {
              r.putObject("acceptance").put("strokes", 3);
              ((ObjectNode) r.at("/cams/0")).put("colour", "grey");
            });
    assertThat(CommandRun.of("compare", before, more).status()).isZero();
  }

  /** Every place of a good file spoilt in turn by what does not belong there. */
  @Test
  void aSpoiltResultIsComparedOrRefusedInOneLineAndNeverBreaks() throws IOException {
    Path file = folder.resolve("spoilt.json");
    List<String> spoilt = Spoilt.of(Files.readString(Path.of(before)));
    int refused = 0;
    for (int i = 0; i < spoilt.size(); i += 29) {
      Files.writeString(file, spoilt.get(i));
      CommandRun run = CommandRun.of("compare", before, file.toString());
      assertThat(run.status()).as(spoilt.get(i) + run.errors()).isIn(0, 1, 3, 4);
      if (run.status() == 4) {
        refused++;
        assertThat(run.errors().lines()).as(run.errors()).hasSize(1);
        assertThat(run.errors()).startsWith(file.toString()).contains("expected");
      }
      assertThat(run.answers() + run.errors()).doesNotContain("\u202e", "\u001b");
    }
    assertThat(refused).isGreaterThan(25);
  }

  @Test
  void aComparisonIsSealedWithBothResults() throws IOException {
    String after = result("after.json", HandStrokes.RIGHT.rate(333));
    String answer = folder.resolve("comparison.json").toString();
    CommandRun.of("compare", before, after, "--quiet", "--json", answer);
    String key = folder.resolve("seal.key").toString();
    assertThat(CommandRun.of("seal", "--key", key, answer).answers().lines())
        .anyMatch(line -> line.matches("result +before.json"))
        .anyMatch(line -> line.matches("result +after.json"));
    Files.writeString(Path.of(after), "\n", java.nio.file.StandardOpenOption.APPEND);
    CommandRun broken = CommandRun.of("verify-seal", "--key", key, answer);
    assertThat(broken.status()).isEqualTo(1);
    assertThat(broken.answers()).contains("CHANGED    result     after.json");
  }

  @Test
  void aWrongCommandLineIsStatus2() {
    assertThat(CommandRun.of("compare").status()).isEqualTo(2);
    assertThat(CommandRun.of("compare", before, before, before).status()).isEqualTo(2);
    String nowhere = folder.resolve("no/such/x.json").toString();
    assertThat(CommandRun.of("compare", before, before, "--quiet", "--json", nowhere).status())
        .isEqualTo(6);
  }
}
