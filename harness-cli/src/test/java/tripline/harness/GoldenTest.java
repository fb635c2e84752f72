package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every recording case through the command, against its two oracles: {@code truth.json}, written by
 * the model that made the recording and never by the product, within its tolerances; and {@code
 * expected/}, what the product answered when a person last read and blessed it, byte for byte (the
 * result without version and outline). {@code -Dtripline.bless=CASE} (or {@code all}) writes
 * expected anew.
 */
class GoldenTest {
  private static final Path RECORDINGS = Path.of("../recordings");
  private static final String BLESS = System.getProperty("tripline.bless", "");
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private static final Pattern COMMAND =
      Pattern.compile("tripline (check|accept) job.toml (.+?)(?: --json result.json)?\\n");

  private static final Pattern COMPARE =
      Pattern.compile("tripline compare (?:\\.\\./(\\S+)/result.json )?result.json");

  static Stream<Path> cases() throws IOException {
    try (Stream<Path> folders = Files.list(RECORDINGS)) {
      return folders.filter(Files::isDirectory).sorted().toList().stream();
    }
  }

  /** How a case is judged: the command and the recordings in the order they were made. */
  private record Judging(String command, List<String> recordings) {
    /** As the case's README states it. */
    static Judging of(Path folder) throws IOException {
      String readme = Files.readString(folder.resolve("README.md"));
      Matcher line = COMMAND.matcher(readme);
      assertThat(line.find()).as(readme).isTrue();
      return new Judging(
          line.group(1),
          Stream.of(line.group(2).split(" ")).map(f -> folder.resolve(f).toString()).toList());
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void answersAsBlessedAndWithinTheTruth(Path folder, @TempDir Path scratch) throws IOException {
    Path file = scratch.resolve("result.json");
    Judging judging = Judging.of(folder);
    List<String> arguments =
        new ArrayList<>(List.of(judging.command(), folder.resolve("job.toml").toString()));
    arguments.addAll(judging.recordings());
    arguments.addAll(List.of("--json", file.toString()));
    CommandRun run = CommandRun.of(arguments.toArray(String[]::new));
    JsonNode result = JSON.readTree(file.toFile());

    JsonNode truth = JSON.readTree(folder.resolve("truth.json").toFile());
    assertThat(result.at("/decision").asText()).isEqualTo(truth.at("/decision").asText());
    within(result, truth);
    assertThat(result.at("/acceptance/strokes")).isEqualTo(truth.at("/acceptance/strokes"));

    blessed(folder.resolve("expected/" + judging.command() + ".txt"), run.answers(), folder);
    blessed(folder.resolve("expected/result.json"), canonical(result), folder);
  }

  static Stream<Path> compared() throws IOException {
    List<Path> found = new ArrayList<>();
    for (Path folder : cases().toList()) {
      if (COMPARE.matcher(Files.readString(folder.resolve("README.md"))).find()) {
        found.add(folder);
      }
    }
    return found.stream();
  }

  @ParameterizedTest
  @MethodSource("compared")
  void comparesAsBlessedAndWithinTheTruth(Path folder) throws IOException {
    Matcher command = COMMAND.matcher(Files.readString(folder.resolve("README.md")));
    Matcher compare = COMPARE.matcher(Files.readString(folder.resolve("README.md")));
    assertThat(command.find() && compare.find()).isTrue();
    // A place whose name is always the same: the answer shows it.
    Path results = Files.createDirectories(Path.of("target/golden"));
    List<String> arguments = new ArrayList<>(List.of("compare"));
    if (compare.group(1) != null) {
      arguments.add(checked(folder.resolveSibling(compare.group(1)), results));
    }
    arguments.add(checked(folder, results));
    CommandRun run = CommandRun.of(arguments.toArray(String[]::new));
    arguments.addAll(List.of("--json", "-"));
    JsonNode answer = JSON.readTree(CommandRun.of(arguments.toArray(String[]::new)).answers());

    JsonNode moved = JSON.readTree(folder.resolve("truth.json").toFile()).at("/moved");
    assertThat(answer.at("/cams")).isNotEmpty();
    for (JsonNode cam : answer.at("/cams")) {
      double truth = moved.path(cam.at("/cam").asText()).asDouble(0);
      assertThat(cam.at("/moved/value").doubleValue())
          .as("movement of " + cam.at("/cam"))
          .isCloseTo(truth, offset(2 * cam.at("/moved/u95").doubleValue()));
      assertThat(cam.at("/seen").asText())
          .as(cam.toString())
          .isEqualTo(truth == 0 ? "no-move-seen" : "moved");
    }
    assertThat(run.status()).isEqualTo(moved.isEmpty() ? 0 : 1);

    blessed(folder.resolve("expected/compare.txt"), run.answers(), folder);
    for (String side : List.of("/before", "/after")) {
      ((ObjectNode) answer.at(side)).remove("sha256");
    }
    ((ObjectNode) answer).remove("tripline");
    blessed(
        folder.resolve("expected/compare.json"), JSON.writeValueAsString(answer) + "\n", folder);
  }

  private static String checked(Path folder, Path results) throws IOException {
    Path result = results.resolve(folder.getFileName() + ".json");
    Judging judging = Judging.of(folder);
    List<String> arguments =
        new ArrayList<>(List.of(judging.command(), folder.resolve("job.toml").toString()));
    arguments.addAll(judging.recordings());
    arguments.addAll(List.of("--quiet", "--json", result.toString()));
    CommandRun.of(arguments.toArray(String[]::new));
    return result.toString();
  }

  private static String canonical(JsonNode result) throws IOException {
    ((ObjectNode) result).remove("tripline");
    for (JsonNode recording : result.at("/recordings")) {
      ((ObjectNode) recording).remove("path");
    }
    return JSON.writeValueAsString(result).replace("../recordings/", "recordings/") + "\n";
  }

  private static void blessed(Path expected, String answer, Path folder) throws IOException {
    if (BLESS.equals("all") || folder.getFileName().toString().equals(BLESS)) {
      Files.createDirectories(expected.getParent());
      Files.writeString(expected, answer);
    }
    assertThat(answer).isEqualTo(Files.readString(expected));
  }

  /** Every figure the truth states, where the truth puts it. */
  private static void within(JsonNode result, JsonNode truth) {
    int compared = 0;
    boolean undecided = result.at("/decision").asText().equals("undecided");
    boolean fromClosedStop = result.at("/travel/datum").asText().equals("closed-stop");
    for (String figure : List.of("span", "lost_motion")) {
      compared +=
          figure(result.at("/travel/" + figure), truth.at("/travel/" + figure), figure, undecided);
    }
    for (String end : List.of("closed", "open")) {
      for (String figure : List.of("backoff", "coast", "margin")) {
        String at = "/ends/" + end + "/" + figure;
        compared += figure(result.at(at), truth.at(at), at, undecided);
      }
    }
    for (JsonNode cam : truth.at("/cams")) {
      JsonNode trip = cam.at("/trip");
      if (!trip.isObject()) {
        continue;
      }
      for (JsonNode seen : result.at("/cams")) {
        if (seen.at("/cam").equals(cam.at("/cam")) && seen.at("/edge").equals(cam.at("/edge"))) {
          if (undecided && !fromClosedStop) {
            // With no stop known x counts from the first reading, and the truth's x means nothing.
            continue;
          }
          assertThat(seen.at("/trip").doubleValue())
              .as("trip of " + cam.at("/cam"))
              .isCloseTo(
                  trip.at("/value").doubleValue(), offset(trip.at("/tolerance").doubleValue()));
          compared++;
        }
      }
    }
    assertThat(compared > 0 || undecided).as("figures compared: " + compared).isTrue();
  }

  private static int figure(JsonNode seen, JsonNode truth, String what, boolean undecided) {
    boolean unseen = seen.isNull() || seen.at("/value").isNull();
    if (!truth.isObject() || truth.at("/value").isNull() || (unseen && undecided)) {
      // What was not exercised has no figure, and then nothing is accepted.
      return 0;
    }
    assertThat(seen.at("/value").doubleValue())
        .as(what)
        .isCloseTo(truth.at("/value").doubleValue(), offset(truth.at("/tolerance").doubleValue()));
    return 1;
  }
}
