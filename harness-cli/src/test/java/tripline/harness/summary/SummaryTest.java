package tripline.harness.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.harness.failure.InputFailure;
import tripline.harness.report.AnswerFile;
import tripline.harness.report.Glyphs;
import tripline.harness.report.Ink;
import tripline.harness.report.Provenance;
import tripline.harness.report.ResultJson;
import tripline.harness.report.Specimen;
import tripline.harness.report.TextStyle;
import tripline.result.Result;

class SummaryTest {
  @TempDir private Path folder;

  @BeforeEach
  void results() throws IOException {
    put("2026/spring.json", Specimen.accepted(), "2026-03-02T08:00:00Z");
    put("2026/autumn.json", Specimen.early(), "2026-09-02T08:00:00Z");
    put("a.json", Specimen.powered(), "2026-03-02T08:00:00Z", "CW-115");
    put("b.json", Specimen.withoutStop(), "2026-03-02T08:00:00Z", "=CW,\"116\"");
    Files.writeString(folder.resolve("package.json"), "{\"name\": \"no result\"}");
    Files.writeString(folder.resolve("notes.txt"), "no result either");
  }

  @Test
  void aLineAnActuatorWorstFirst() {
    StringWriter text = new StringWriter();
    SummaryText.write(
        Summary.of(folder), new TextStyle(Glyphs.UNICODE, Ink.PLAIN), new PrintWriter(text));
    assertThat(text.toString().lines())
        .containsExactly(
            "DECISION  TAG               CLOSED   OPEN     MARGIN   WORST FINDING   HISTORY",
            "REJECT    CW-114            0.731 +  0.487 =  -        cam-early       aR",
            "undecided =CW,\"116\"         -        -        -        stop-unknown    ?",
            "accept    CW-115            0.512    0.487    0.274    -               a",
            "3 actuators, 4 results: 1 rejected, 1 undecided, 1 accepted",
            "left out: 1 file that is no result, 0 that could not be used",
            "Turns; + - grew or shrank beyond 95 %, = did not, since the first result or",
            "the last adjustment, which HISTORY shows as |.");
  }

  @Test
  void dataToolsReadTheRowsAsTheyAre() throws IOException {
    StringWriter csv = new StringWriter();
    SummaryData.csv(Summary.of(folder), csv);
    List<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(csv.toString()).stream().toList();
    assertThat(rows)
        .extracting(r -> r.getField("tag"))
        .containsExactly("CW-114", "'=CW,\"116\"", "CW-115");
    assertThat(rows)
        .extracting(r -> r.getField("file"))
        .containsExactly("2026/autumn.json", "b.json", "a.json");
    assertThat(rows.get(0).getField("backoff_closed")).isEqualTo("0.731");
    assertThat(Double.parseDouble(rows.get(0).getField("backoff_closed_change"))).isEqualTo(0.219);
    assertThat(rows.get(1).getField("backoff_closed")).isEmpty();
    assertThat(rows.get(2).getField("margin_open_u")).isEqualTo("0.0112");
    StringWriter json = new StringWriter();
    SummaryData.ndjson(Summary.of(folder), json);
    List<String> lines = json.toString().lines().toList();
    assertThat(lines).hasSize(3);
    JsonNode first = new ObjectMapper().readTree(lines.get(0));
    assertThat(first.get("when").asText()).isEqualTo("2026-09-02T08:00:00Z");
    assertThat(first.get("faults").asInt()).isEqualTo(1);
    assertThat(first.get("history").asText()).isEqualTo("aR");
    JsonNode second = new ObjectMapper().readTree(lines.get(1));
    assertThat(second.get("tag").asText()).isEqualTo("=CW,\"116\"");
    assertThat(second.get("backoff_closed").isNull()).isTrue();
    assertThat(second.fieldNames()).toIterable().containsExactlyElementsOf(rows.get(0).getHeader());
  }

  @Test
  void thePageIsWellFormedAndHostileTextStaysText() throws Exception {
    put("c.json", Specimen.hostile(), "2026-03-02T08:00:00Z");
    StringWriter page = new StringWriter();
    SummaryPage.write(Summary.of(folder), page);
    var document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(page.toString().getBytes(StandardCharsets.UTF_8)));
    assertThat(document.getElementsByTagName("tr").getLength()).isEqualTo(5);
    assertThat(document.getElementsByTagName("script").getLength()).isZero();
    assertThat(document.getElementsByTagName("img").getLength()).isZero();
    assertThat(page.toString()).contains("0.731 +", "Left out: 1 file that is no result");
  }

  @Test
  void damagedFilesAreNamedAndStopNothing() throws IOException {
    Path whole = folder.resolve("a.json");
    Files.writeString(folder.resolve("cut.json"), Files.readString(whole).substring(0, 4000));
    Files.writeString(folder.resolve("bad.json"), "{\"format\": 1,\n  \"job\": {\"tag\": CW}}");
    Files.writeString(folder.resolve("empty.json"), "");
    Summary summary = Summary.of(folder);
    assertThat(summary.results()).isEqualTo(4);
    assertThat(summary.damaged())
        .hasSize(3)
        .allMatch(l -> l.endsWith(": not JSON, expected a result file"))
        .anyMatch(l -> l.contains("bad.json:2:"))
        .anyMatch(l -> l.contains("empty.json:1:1:"))
        .anyMatch(l -> l.contains("cut.json:"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"value\": 1e999 | closed backoff is no number of turns, expected one or null",
        "\"value\": \"0.5\" | closed backoff is no number of turns, expected one or null",
        "\"value\": 0.5, \"u\": -1 | closed backoff's u is negative, expected 0 or more",
        "\"value\": 0.5, \"u\": 1e400 | closed backoff's u is no number of turns, expected one or null",
        "\"value\": @LONG@ | 'ends' holds what no result does: too long or deep",
      })
  void figuresThatAreNoneAreNamed(String figure, String problem) throws IOException {
    Files.writeString(
        folder.resolve("odd.json"),
        ("{\"format\": 1, \"decision\": \"accept\", \"job\": {\"tag\": \"CW-9\"},\n"
                + " \"ends\": {\"closed\": {\"backoff\": {"
                + figure
                + "}}, \"open\": null}}")
            .replace("@LONG@", "0." + "123456789".repeat(200)));
    Summary summary = Summary.of(folder);
    assertThat(summary.results()).isEqualTo(4);
    assertThat(summary.damaged()).containsExactly(folder.resolve("odd.json") + ":2:10: " + problem);
  }

  @Test
  void aDoublesLastDigitsAndExtremesAreFigures() throws IOException {
    Files.writeString(
        folder.resolve("odd.json"),
        "{\"format\": 1, \"decision\": \"accept\", \"job\": {\"tag\": \"CW-9\"}, \"ends\":"
            + " {\"closed\": {\"backoff\": {\"value\": 0."
            + "123456789".repeat(100)
            + ", \"u\": 4.9e-324}, \"margin\": {\"value\": -1.7e308, \"u\": 0}}}}");
    Summary summary = Summary.of(folder);
    StringWriter out = new StringWriter();
    SummaryData.csv(summary, out);
    SummaryData.ndjson(summary, out);
    SummaryPage.write(summary, out);
    SummaryText.write(summary, new TextStyle(Glyphs.ASCII, Ink.PLAIN), new PrintWriter(out));
    assertThat(out.toString()).contains("CW-9", "0.123456789,");
  }

  @Test
  void aResultOfAnotherFormatOrWithoutDecisionIsNamed() throws IOException {
    String rest = ", \"job\": {\"tag\": \"CW-9\"}, \"ends\": {}}";
    Files.writeString(
        folder.resolve("new.json"), "{\"format\": 2, \"decision\": \"accept\"" + rest);
    Files.writeString(folder.resolve("odd.json"), "{\"format\": 1, \"decision\": \"yes\"" + rest);
    assertThat(Summary.of(folder).damaged())
        .containsExactlyInAnyOrder(
            folder.resolve("new.json") + ":1:1: is a result of format 2, expected 1",
            folder.resolve("odd.json")
                + ":1:1: has no decision, expected accept, reject or undecided");
  }

  @Test
  void nothingButDamageStillHasAHeader() throws IOException {
    Path alone = Files.createDirectory(folder.resolve("alone"));
    Files.writeString(alone.resolve("cut.json"), "{\"format\": 1,");
    StringWriter csv = new StringWriter();
    SummaryData.csv(Summary.of(alone), csv);
    assertThat(csv.toString()).startsWith("tag,decision,file,").endsWith("open_set_since\r\n");
    assertThat(csv.toString().lines()).hasSize(1);
  }

  @Test
  void linksAreNotFollowedButTheFolderMayBeOne() throws IOException {
    Files.createSymbolicLink(folder.resolve("2026/again"), folder);
    Files.createSymbolicLink(folder.resolve("same.json"), folder.resolve("a.json"));
    assertThat(Summary.of(folder).results()).isEqualTo(4);
    Path link = folder.resolve("link");
    Path inner = Files.createSymbolicLink(link, folder.resolve("2026"));
    Files.writeString(folder.resolve("2026/cut.json"), "{");
    Summary through = Summary.of(inner);
    assertThat(through.results()).isEqualTo(2);
    assertThat(through.damaged())
        .containsExactly(link.resolve("cut.json") + ":1:2: not JSON, expected a result file");
  }

  @Test
  void aHugeFileIsNamedAndNotRead() throws IOException {
    Path huge = folder.resolve("huge.json");
    try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
      file.setLength(3L << 30);
    }
    Summary summary = Summary.of(folder);
    assertThat(summary.results()).isEqualTo(4);
    assertThat(summary.damaged())
        .containsExactly(huge + ": is larger than 16 MiB, expected a result file");
  }

  @Test
  void halvesOfCharactersInATagDoNotSpoilAFile() throws IOException {
    Files.writeString(
        folder.resolve("odd.json"),
        "{\"format\": 1, \"decision\": \"accept\", \"job\": {\"tag\": \"CW\\ud800\\u202e9\"},"
            + " \"ends\": {}}");
    Path out = folder.resolve("out.ndjson");
    AnswerFile.write(out, writer -> SummaryData.ndjson(Summary.of(folder), writer));
    AnswerFile.write(out, writer -> SummaryData.csv(Summary.of(folder), writer));
    AnswerFile.write(out, writer -> SummaryPage.write(Summary.of(folder), writer));
    assertThat(Files.readString(out)).contains("CW\uFFFD\uFFFD9");
  }

  @Test
  void refusesAFolderWithoutResults() throws IOException {
    Path empty = Files.createDirectory(folder.resolve("empty"));
    assertThatThrownBy(() -> Summary.of(empty))
        .isInstanceOf(InputFailure.class)
        .hasMessageContaining("holds no result files");
    assertThatThrownBy(() -> Summary.of(folder.resolve("a.json")))
        .hasMessageContaining("is no folder");
    assertThatThrownBy(() -> Summary.of(folder.resolve("none")))
        .hasMessageContaining("no such folder");
  }

  @Test
  void aChangeIsSignificantBeyondItsInterval() {
    // Two figures with u = 0.010 each differ significantly beyond 1.96 * 0.01414 = 0.0277.
    assertThat(new Figure(0.5, 0.01).to(new Figure(0.527, 0.01)).isSignificant()).isFalse();
    assertThat(new Figure(0.5, 0.01).to(new Figure(0.528, 0.01)).isSignificant()).isTrue();
    assertThat(new Figure(0.5, 0.01).to(new Figure(0.472, 0.01)).isSignificant()).isTrue();
  }

  private void put(String name, Result result, String started) throws IOException {
    put(name, result, started, result.tag());
  }

  private void put(String name, Result r, String started, String tag) throws IOException {
    Result result =
        new Result(
            r.decision(),
            tag,
            r.recordings(),
            r.travel(),
            r.settings(),
            r.changes(),
            r.cams(),
            r.contacts(),
            r.ends(),
            r.findings(),
            r.asFound());
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    try (var out = Files.newBufferedWriter(file)) {
      ResultJson.write(
          result,
          new Provenance(
              "job.toml",
              "00",
              List.of(
                  new Provenance.Made(
                      Optional.of(Instant.parse(started)), Optional.of("RL-8 0007")))),
          out);
    }
  }
}
