package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.harness.jobfile.JobFile;

class ChartTextTest {
  private static final Path RESOURCES = Path.of("src/test/resources");

  @ParameterizedTest
  @CsvSource({
    "full, UNICODE, full.txt",
    "full, ASCII, full-ascii.txt",
    "contract, UNICODE, contract.txt",
    "least, UNICODE, least.txt"
  })
  void theDrawingIsTheOneReviewed(String sheet, Glyphs glyphs, String expected) throws IOException {
    assertThat(chart(RESOURCES.resolve("sheets/" + sheet + ".toml"), glyphs))
        .containsExactlyElementsOf(Files.readAllLines(RESOURCES.resolve("charts/" + expected)));
  }

  static Stream<Path> sheets() throws IOException {
    try (Stream<Path> good = Files.list(RESOURCES.resolve("sheets"));
        Stream<Path> doubtful = Files.list(RESOURCES.resolve("doubtfulsheets"))) {
      return Stream.concat(good, doubtful)
          .filter(f -> f.toString().endsWith(".toml"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void everySheetFitsEightyColumnsAndAsciiMeansAscii(Path sheet) {
    assertThat(chart(sheet, Glyphs.UNICODE)).allMatch(line -> line.length() <= 80);
    assertThat(chart(sheet, Glyphs.ASCII))
        .allMatch(line -> line.length() <= 80)
        .allMatch(line -> StandardCharsets.US_ASCII.newEncoder().canEncode(line));
  }

  private static List<String> chart(Path sheet, Glyphs glyphs) {
    StringWriter text = new StringWriter();
    ChartText.write(JobFile.read(sheet), glyphs, new PrintWriter(text));
    return text.toString().lines().toList();
  }
}
