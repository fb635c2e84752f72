package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The recordings that cannot be used, through the command: the one line of each, the exit status,
 * and no answer that looks whole. Their README says what stands beside each.
 */
class BadRecordingsTest {
  private static final Path RECORDINGS =
      Path.of(System.getProperty("tripline.root"), "core/src/test/resources/badrecordings");

  /** A sheet for the channels k1 and k2, as short as a sheet can be. */
  private static final String SHEET =
      """
      [job]
      tag = "CW-114"
      [position]
      side = "drive"
      turns_per_unit = 1.0
      [ends.closed]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      [ends.open]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      [[cam]]
      name = "close"
      [[cam]]
      name = "open"
      [[contact]]
      name = "21-22"
      channel = "k1"
      cam = "close"
      closed = "open-side"
      role = "limit-closing"
      [[contact]]
      name = "31-32"
      channel = "k2"
      cam = "open"
      closed = "closed-side"
      role = "limit-opening"
      """;

  @TempDir private static Path folder;

  static Stream<String> names() throws IOException {
    try (Stream<Path> files = Files.list(RECORDINGS)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> f.endsWith(".csv"))
          .map(f -> f.substring(0, f.length() - ".csv".length()))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void oneLineSaysWhatIsWrongAndNothingIsAnswered(String name) throws IOException {
    Path recording = RECORDINGS.resolve(name + ".csv");
    CommandRun run = CommandRun.of("check", sheet(name), recording.toString(), "--json", "-");
    assertThat(run.errors().replace("\r\n", "\n"))
        .isEqualTo(
            recording.getParent()
                + recording.getFileSystem().getSeparator()
                + Files.readString(RECORDINGS.resolve(name + ".expected")));
    assertThat(run.answers()).isEmpty();
    assertThat(run.status()).isEqualTo(4);
  }

  /** The same sheet takes a sound recording: it is not the sheet that is refused above. */
  @Test
  void theSheetItselfIsSound() throws IOException {
    Path recording = folder.resolve("sound.csv");
    Files.writeString(recording, "time,position,k1,k2\n0,1,1,1\n1,1,1,1\n");
    CommandRun run = CommandRun.of("check", sheet("none"), recording.toString());
    assertThat(run.status()).isEqualTo(3);
    assertThat(run.answers()).isNotEmpty();
  }

  private static String sheet(String name) throws IOException {
    Path layout = RECORDINGS.resolve(name + ".layout");
    Path sheet = folder.resolve(name + ".toml");
    Files.writeString(
        sheet, Files.exists(layout) ? SHEET + "[recording]\n" + Files.readString(layout) : SHEET);
    return sheet.toString();
  }
}
