package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as scripts see it; what it answers to whole cases is blessed beside these. */
class AcceptTest {
  private static final Path CASES = Path.of("../recordings");

  @TempDir Path folder;

  private static CommandRun accept(String name, List<String> recordings, String... more) {
    return accept(CASES.resolve(name).resolve("job.toml"), name, recordings, more);
  }

  private static CommandRun accept(Path job, String name, List<String> recordings, String... more) {
    List<String> line = new ArrayList<>(List.of("accept", job.toString()));
    recordings.forEach(r -> line.add(CASES.resolve(name).resolve(r).toString()));
    line.addAll(List.of(more));
    return CommandRun.of(line.toArray(new String[0]));
  }

  private static JsonNode json(CommandRun run) throws IOException {
    return new ObjectMapper().readTree(run.answers());
  }

  @Test
  void theStatusTellsTheDecision() {
    assertThat(accept("accept-repeats", List.of("hand.csv", "motor.csv"), "--quiet"))
        .isEqualTo(new CommandRun(0, "", ""));
    assertThat(accept("accept-few-strokes", List.of("hand.csv"), "--quiet"))
        .isEqualTo(new CommandRun(3, "", ""));
    assertThat(accept("accept-drift", List.of("hand.csv", "motor.csv"), "--quiet").status())
        .isEqualTo(1);
  }

  @Test
  void theDecisionComesFirstAndWhatIsMissingBesideIt() {
    String answer = accept("accept-few-strokes", List.of("hand.csv")).answers();
    assertThat(answer.lines().findFirst().orElseThrow()).startsWith("UNDECIDED");
    assertThat(answer).contains("needs 1 more stroke each way");
  }

  /** The same recording accepted is undecided for its strokes, checked it is accepted. */
  @Test
  void acceptingAsksMoreThanChecking() throws IOException {
    CommandRun accepted = accept("right-fine", List.of("hand.csv"), "--json", "-");
    assertThat(accepted.status()).isEqualTo(3);
    JsonNode acceptance = json(accepted).at("/acceptance");
    assertThat(acceptance.at("/strokes/opening").intValue()).isEqualTo(1);
    assertThat(acceptance.at("/more_strokes/closing").intValue()).isEqualTo(2);
    assertThat(acceptance.at("/asked/factor").doubleValue()).isBetween(9.7887, 9.7888);
    CommandRun checked =
        CommandRun.of(
            "check",
            CASES.resolve("right-fine/job.toml").toString(),
            CASES.resolve("right-fine/hand.csv").toString(),
            "--json",
            "-");
    assertThat(checked.status()).isZero();
    assertThat(json(checked).has("acceptance")).as("of an acceptance only").isFalse();
  }

  /** A hand stroke and four of the motor each way count together; one recording alone does not. */
  @Test
  void strokesOfSeveralRecordingsPool() throws IOException {
    JsonNode both = json(accept("accept-repeats", List.of("hand.csv", "motor.csv"), "--json", "-"));
    assertThat(both.at("/acceptance/strokes/closing").intValue()).isEqualTo(5);
    JsonNode close = both.at("/acceptance/series/1/trips");
    assertThat(close.findValuesAsText("recording")).contains("0", "1");
    JsonNode hand = json(accept("accept-repeats", List.of("hand.csv"), "--json", "-"));
    assertThat(hand.at("/acceptance/strokes/closing").intValue()).isEqualTo(1);
  }

  @Test
  void strokesBeforeAnAdjustmentDoNotCount() throws IOException {
    JsonNode result = json(accept("adjusted", List.of("hand.csv"), "--json", "-"));
    assertThat(result.at("/settings")).hasSize(2);
    assertThat(result.at("/acceptance/strokes/opening").intValue())
        .isLessThan(fullStrokes(result, "opening"));
    for (JsonNode series : result.at("/acceptance/series")) {
      for (JsonNode trip : series.at("/trips")) {
        JsonNode stroke =
            result.at(
                "/recordings/%d/strokes/%d"
                    .formatted(trip.at("/recording").intValue(), trip.at("/stroke").intValue()));
        assertThat(stroke.at("/setting").intValue()).isEqualTo(1);
      }
    }
  }

  private static int fullStrokes(JsonNode result, String direction) {
    int full = 0;
    for (JsonNode stroke : result.at("/recordings/0/strokes")) {
      boolean counts =
          stroke.at("/full").booleanValue()
              && stroke.at("/direction").textValue().equals(direction);
      full += counts ? 1 : 0;
    }
    return full;
  }

  /** The sheet's own number, confidence and share stand in the answer and in its factor. */
  @Test
  void theSheetSaysWhatIsAskedFor() throws IOException {
    String sheet = Files.readString(CASES.resolve("accept-repeats/job.toml"));
    Path job = folder.resolve("job.toml");
    Files.writeString(
        job, sheet + "\n[acceptance]\nstrokes = 5\nconfidence = 0.95\nshare = 0.99\n");
    CommandRun run = accept(job, "accept-repeats", List.of("hand.csv", "motor.csv"), "--json", "-");
    JsonNode acceptance = json(run).at("/acceptance");
    // ISO 16269-6, two-sided, n = 5, 99 % at 95 %: 6.5980, rounded up.
    assertThat(acceptance.at("/asked/factor").doubleValue()).isBetween(6.5979, 6.5980);
    assertThat(acceptance.at("/trips/0/factor").doubleValue()).isBetween(6.5979, 6.5980);
  }

  @Test
  void whatCannotBeUsedIsOneLineAndItsStatus() throws IOException {
    String job = CASES.resolve("accept-repeats/job.toml").toString();
    assertThat(CommandRun.of("accept").status()).isEqualTo(2);
    assertThat(CommandRun.of("accept", job).status()).isEqualTo(2);
    assertThat(CommandRun.of("accept", job, "x.csv", "--report", "x.txt").status()).isEqualTo(2);
    for (Path unusable :
        List.of(
            folder.resolve("none.csv"),
            folder,
            Files.writeString(folder.resolve("empty.csv"), ""))) {
      CommandRun run = CommandRun.of("accept", job, unusable.toString());
      assertThat(run.status()).as(unusable.toString()).isEqualTo(4);
      assertThat(run.answers()).isEmpty();
      assertThat(run.errors().lines()).hasSize(1);
    }
  }
}
