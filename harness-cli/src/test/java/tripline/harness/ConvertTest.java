package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Captures and CSV recordings of the same rows are worth the same. */
class ConvertTest {
  private static final Path RECORDINGS = Path.of("../recordings");
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  private static CommandRun convert(Path in, Path out, String... more) {
    List<String> arguments = new ArrayList<>(List.of("convert", in.toString(), out.toString()));
    arguments.addAll(List.of(more));
    return CommandRun.of(arguments.toArray(String[]::new));
  }

  private static JsonNode check(Path job, List<Path> recordings) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("check", job.toString()));
    recordings.forEach(r -> arguments.add(r.toString()));
    arguments.addAll(List.of("--json", "-"));
    CommandRun run = CommandRun.of(arguments.toArray(String[]::new));
    assertThat(run.answers()).as(run.errors()).isNotEmpty();
    JsonNode result = JSON.readTree(run.answers());
    for (JsonNode recording : result.at("/recordings")) {
      ((ObjectNode) recording).remove(List.of("file", "sha256"));
    }
    return result;
  }

  /** Equal but for the last digits of figures. */
  private static void same(JsonNode one, JsonNode other, String at) {
    if (one.isNumber() && other.isNumber()) {
      double value = other.doubleValue();
      assertThat(one.doubleValue())
          .as(at)
          .isCloseTo(value, within(1e-6 * Math.max(1e-3, Math.abs(value))));
    } else if (one.isContainerNode()) {
      assertThat(one.size()).as(at).isEqualTo(other.size());
      if (one.isArray()) {
        for (int i = 0; i < one.size(); i++) {
          same(one.get(i), other.get(i), at + "/" + i);
        }
      } else {
        for (Iterator<String> names = one.fieldNames(); names.hasNext(); ) {
          String name = names.next();
          assertThat(other.has(name)).as(at + "/" + name).isTrue();
          same(one.get(name), other.get(name), at + "/" + name);
        }
      }
    } else {
      assertThat(one).as(at).isEqualTo(other);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "right-fine,hand.csv",
    "right-coarse,hand.csv",
    "adjusted,hand.csv",
    "late,hand.csv",
    "motor-right,hand.csv open.csv close.csv",
    "chatter-and-coast,hand.csv open.csv close.csv"
  })
  void aCaptureAnswersAsItsRecordingDoesAndComesBackAsIs(String name, String files)
      throws IOException {
    Path job = RECORDINGS.resolve(name).resolve("job.toml");
    List<Path> recordings = new ArrayList<>();
    List<Path> captures = new ArrayList<>();
    List<Path> again = new ArrayList<>();
    for (String file : files.split(" ", -1)) {
      Path recording = RECORDINGS.resolve(name).resolve(file);
      Path capture = folder.resolve(file.replace(".csv", ".bin"));
      CommandRun run = convert(recording, capture);
      assertThat(run.status()).as(run.errors()).isZero();
      assertThat(run.answers()).contains(" rows, ");
      Path csv = folder.resolve("again-" + file);
      Path second = folder.resolve(file.replace(".csv", "-2.bin"));
      Path third = folder.resolve("third-" + file);
      assertThat(convert(capture, csv).status()).isZero();
      assertThat(convert(csv, second).status()).isZero();
      assertThat(convert(second, third).status()).isZero();
      assertThat(csv).hasSameBinaryContentAs(third);
      recordings.add(recording);
      captures.add(capture);
      again.add(csv);
    }
    JsonNode expected = check(job, recordings);
    same(check(job, captures), expected, "capture");
    same(check(job, again), expected, "again");
  }

  @Test
  void whoRecordedGoesAlong() throws IOException {
    Path it = RECORDINGS.resolve("unplugged");
    Path csv = folder.resolve("hand.csv");
    assertThat(convert(it.resolve("hand.bin"), csv).status()).isZero();
    String said = loggerOf(it.resolve("job.toml"), it.resolve("hand.bin"));
    assertThat(said).isNotBlank();
    assertThat(loggerOf(it.resolve("job.toml"), csv)).isEqualTo(said);
    Path again = folder.resolve("again.csv");
    assertThat(convert(csv, again).status()).isZero();
    assertThat(loggerOf(it.resolve("job.toml"), again)).isEqualTo(said);
  }

  private static String loggerOf(Path job, Path recording) throws IOException {
    return check(job, List.of(recording)).at("/recordings/0/logger").asText();
  }

  @Test
  void aCaptureCutAnywhereIsCheckedForWhatItHoldsAndSaysSo() throws IOException {
    Path capture = folder.resolve("hand.bin");
    convert(RECORDINGS.resolve("right-fine/hand.csv"), capture);
    byte[] whole = Files.readAllBytes(capture);
    String job = RECORDINGS.resolve("right-fine/job.toml").toString();
    for (double share : new double[] {0.3, 0.7, 0.9999}) {
      Path cut = folder.resolve("cut" + share + ".bin");
      Files.write(cut, Arrays.copyOf(whole, (int) (whole.length * share)));
      CommandRun run = CommandRun.of("check", job, cut.toString(), "--quiet");
      assertThat(run.status()).isIn(0, 3);
      assertThat(run.errors()).contains(cut + ": was cut off after ");
    }
    for (int length : new int[] {1, 8, 100}) {
      Path cut = folder.resolve("stub" + length + ".bin");
      Files.write(cut, Arrays.copyOf(whole, length));
      CommandRun run = CommandRun.of("check", job, cut.toString());
      assertThat(run.status()).isEqualTo(4);
      assertThat(run.errors())
          .startsWith(cut + ": holds no samples, expected a recording: ")
          .hasLineCount(1);
    }
  }

  @Test
  void damageInACaptureIsSaidAndTheRestIsUsed() throws IOException {
    Path capture = folder.resolve("hand.bin");
    convert(RECORDINGS.resolve("right-fine/hand.csv"), capture);
    byte[] bytes = Files.readAllBytes(capture);
    Arrays.fill(bytes, bytes.length / 2, bytes.length / 2 + 2000, (byte) 0x55);
    Files.write(capture, bytes);
    CommandRun run =
        CommandRun.of(
            "check", RECORDINGS.resolve("right-fine/job.toml").toString(), capture.toString());
    assertThat(run.errors())
        .contains("the file is damaged in 1 places")
        .contains("missing from the file: ")
        .contains("messages lost");
    assertThat(run.answers()).contains("samples-lost");
  }

  @Test
  void aForeignLayoutBecomesTheUsualOneByItsJobSheet() throws IOException {
    Path csv = folder.resolve("foreign.csv");
    Files.writeString(
        csv,
        "Zeit;Weg;k1;k2;Temperatur\n0;1,5;ZU;AUF;20,1\n10;1,25;AUF;AUF;20,2\n20;;ZU;AUF;20,3\n");
    Path job = folder.resolve("job.toml");
    Files.writeString(
        job,
        Files.readString(RECORDINGS.resolve("right-fine/job.toml"))
                .replaceFirst("(?s)\\[\\[cam\\]\\].*", "")
            + """
            [[cam]]
            name = "close"
            [[cam]]
            name = "open"
            [[contact]]
            name = "11-12"
            channel = "k1"
            cam = "close"
            closed = "open-side"
            role = "limit-closing"
            [[contact]]
            name = "41-42"
            channel = "k2"
            cam = "open"
            closed = "closed-side"
            role = "limit-opening"
            [recording]
            separator = ";"
            decimal = ","
            time = "Zeit"
            time_unit = "ms"
            position = "Weg"
            closed = ["ZU"]
            open = ["AUF"]
            drive = "hand"
            """);
    Path out = folder.resolve("usual.csv");
    CommandRun run = convert(csv, out, "--job", job.toString());
    assertThat(run.status()).as(run.errors()).isZero();
    assertThat(Files.readString(out))
        .isEqualTo(
            """
            # tripline-recording: 1
            # drive: hand
            time,position,k1,k2,mark
            0.000,1.5,1,0,
            0.010,1.25,0,0,
            0.020,,1,0,
            """);
  }

  @Test
  void whatCannotBeConvertedIsOneLine() throws IOException {
    Path csv = RECORDINGS.resolve("right-fine/hand.csv");
    Path capture = folder.resolve("hand.bin");
    convert(csv, capture);
    byte[] before = Files.readAllBytes(capture);
    assertLine(convert(csv, capture), 6, capture + ": is there already");
    assertThat(capture).hasBinaryContent(before);
    assertLine(convert(capture, folder.resolve("x.bin")), 4, capture + ": is a capture already");
    assertLine(convert(csv, folder.resolve("x.txt")), 2, "tripline convert: OUT is ");
    assertLine(convert(folder, folder.resolve("x.bin")), 4, folder + ": is a folder");
    Path none = folder.resolve("none.csv");
    assertLine(convert(none, folder.resolve("x.bin")), 4, none + ": no such file");
    assertLine(
        convert(csv, folder.resolve("no/x.bin")), 6, folder.resolve("no/x.bin") + ": could not");
    Path bad = folder.resolve("bad.csv");
    Files.writeString(bad, "time,position,k1\n0,1,1\n1,2,21.5\n", StandardCharsets.UTF_8);
    assertLine(convert(bad, folder.resolve("x.bin")), 4, bad + ":3:5: ");
    try (var left = Files.list(folder)) {
      assertThat(left.map(p -> p.getFileName().toString()))
          .containsExactlyInAnyOrder("hand.bin", "bad.csv");
    }
  }

  private static void assertLine(CommandRun run, int status, String start) {
    assertThat(run.errors()).startsWith(start).hasLineCount(1);
    assertThat(run.status()).isEqualTo(status);
    assertThat(run.answers()).isEmpty();
  }
}
