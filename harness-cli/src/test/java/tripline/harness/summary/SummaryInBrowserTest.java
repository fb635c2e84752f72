package tripline.harness.summary;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.harness.report.Specimen;
import tripline.harness.report.record.Browser;

/** The table as a browser lays it out, with the worst that result files can hold. */
class SummaryInBrowserTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String MARKUP = Specimen.HOSTILE;

  @TempDir private Path folder;
  private Path results;

  @BeforeEach
  void folderOfResults() throws IOException {
    results = Files.createDirectory(folder.resolve("results"));
    Path cases = Path.of("../recordings");
    put("a.json", cases.resolve("motor-right"), "CW-114", "note");
    put("b.json", cases.resolve("coast-reaches-stop"), "CW-115", "fault");
    put("markup <b>&amp;.json", cases.resolve("early"), MARKUP, MARKUP);
    put("long.json", cases.resolve("late"), "W".repeat(4000), "x".repeat(500));
    put(
        "rtl.json",
        cases.resolve("stuck"),
        "\u202E411-WC\u2066 \u05D0\u05D1\u05D2-7",
        "\u202Eetal-mac");
    put("control.json", cases.resolve("silent"), "CW\u0000\u001B[2J\u0085\u2028-9\r\nx", "\u0007");
    put("half.json", cases.resolve("drift"), "CW\uDC00\uFFFF-10", "trip-drift");
  }

  @ParameterizedTest
  @ValueSource(ints = {390, 1280})
  void hostileTextStaysTextAndEverythingInItsPlace(int width) throws Exception {
    Path chromium = Browser.found();
    StringWriter page = new StringWriter();
    SummaryPage.write(Summary.of(results), page);
    // Without its policy the page has nothing but the escaping to protect it.
    String bare =
        page.toString().replaceFirst("<meta http-equiv=\"Content-Security-Policy\"[^>]*/>", "");
    assertThat(bare).hasSizeLessThan(page.toString().length());
    JsonNode seen = Browser.measure(chromium, folder, bare, width);
    assertThat(seen.get("title").asText()).isEqualTo("Summary of 7 actuators");
    assertThat(seen.get("width").asInt()).isEqualTo(width);
    assertThat(seen.get("scroll").asInt()).isLessThanOrEqualTo(width);
    for (String trouble : List.of("outside", "suspicious")) {
      assertThat(seen.get(trouble)).as(trouble).isEmpty();
    }
    assertThat(bare.codePoints().filter(SummaryInBrowserTest::steers)).isEmpty();
  }

  /** Controls, direction marks, separators, halves of pairs. */
  private static boolean steers(int c) {
    return (c < ' ' && c != '\n')
        || (c >= 0x7F && c < 0xA0)
        || (c >= 0x200B && c <= 0x200F)
        || (c >= 0x2028 && c <= 0x202E)
        || (c >= 0x2060 && c <= 0x206F)
        || (c >= 0xD800 && c <= 0xDFFF)
        || c == 0xFFFF;
  }

  private void put(String name, Path example, String tag, String code) throws IOException {
    ObjectNode it = (ObjectNode) MAPPER.readTree(example.resolve("expected/result.json").toFile());
    ((ObjectNode) it.path("job")).put("tag", tag);
    ObjectNode finding = it.withArray("findings").insertObject(0);
    finding.put("code", code).put("severity", "fault");
    Files.writeString(
        results.resolve(name),
        MAPPER.writer().with(JsonWriteFeature.ESCAPE_NON_ASCII).writeValueAsString(it));
  }
}
