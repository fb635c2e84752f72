package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tripline.Version;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.resultfile.ReferenceFile;
import tripline.harness.resultfile.ResultFile;
import tripline.harness.resultfile.Spoilt;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.Adjust;
import tripline.result.Result.AsFound;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.PartResult;
import tripline.result.Result.PathPoint;
import tripline.result.Result.PathResult;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SamplingResult;
import tripline.result.Result.SensorResult;
import tripline.result.Result.SettingResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.Stretch;
import tripline.result.Result.StrokeResult;
import tripline.result.Result.TravelResult;
import tripline.result.Result.TripResult;
import tripline.sample.ContactState;
import tripline.travel.Reference;

/** The result file's stable keys, typed in from the contract of the product's first version. */
class ResultJsonTest {
  private static final JobSheet SHEET =
      JobFile.read(Path.of("src/test/resources/sheets/hand.toml")).sheet();

  private static final Measured FIGURE =
      new Measured(0.5, 0.0125, 0.0245, List.of(new PartResult("fit", 0.0125, "normal")));
  private static final Provenance FROM =
      new Provenance(
          "job.toml",
          "ab12",
          List.of(new Provenance.Made(Optional.of(Instant.EPOCH), Optional.of("RL-8 0007"))));

  @TempDir Path folder;

  @Test
  void everyStableKeyIsThereInItsOrder() throws IOException {
    JsonNode root = tree(result());
    keys(
        root,
        "format tripline decision job recordings travel settings changes cams contacts ends findings");
    keys(root.at("/job"), "tag file sha256");
    keys(root.at("/recordings/0"), "file sha256 drive samples duration_s strokes");
    keys(
        root.at("/recordings/0/strokes/0"),
        "number direction from to start_s end_s full stopped_by coast stroke_time_s");
    keys(root.at("/travel"), "datum closed_stop open_stop span lost_motion");
    keys(root.at("/travel/closed_stop"), "value u source");
    keys(root.at("/travel/span"), "value u");
    keys(root.at("/settings/0"), "number recording from_s to_s judged");
    keys(
        root.at("/changes/0"),
        "recording stroke setting contact cam to direction at_rest time_s reading reading_u position u bounces settle_s");
    keys(
        root.at("/cams/0"),
        "cam trip u target tolerance decision probability differential strokes spread adjust");
    keys(root.at("/cams/0/adjust"), "turns words");
    keys(root.at("/contacts/0"), "contact role decision as_charted worst_settle_s");
    keys(root.at("/ends"), "closed open");
    keys(root.at("/ends/closed"), "backoff stopped_by coast margin decision");
    keys(root.at("/ends/closed/backoff"), "value u target tolerance decision probability");
    keys(
        root.at("/findings/0"),
        "code severity contact cam recording stroke time_s message evidence action");
  }

  @Test
  void valuesArriveAndPartsOfUncertaintyStandBesideThem() throws IOException {
    JsonNode root = tree(result());
    assertThat(root.at("/format").intValue()).isEqualTo(1);
    assertThat(root.at("/tripline").textValue()).isEqualTo(Version.TEXT);
    assertThat(root.at("/decision").textValue()).isEqualTo("undecided");
    assertThat(root.at("/recordings/0/samples").longValue()).isEqualTo(5_000_000_000L);
    assertThat(root.at("/recordings/0/started").textValue()).isEqualTo("1970-01-01T00:00:00Z");
    assertThat(root.at("/recordings/0/path/position/1").doubleValue()).isEqualTo(31);
    assertThat(root.at("/changes/0/parts/0/name").textValue()).isEqualTo("fit");
    assertThat(root.at("/cams/0/adjust/steps/1").textValue()).isEqualTo("turn");
    assertThat(root.at("/contacts/0/closed_opening/0/to").doubleValue()).isEqualTo(31);
    assertThat(root.at("/findings/0/evidence/strokes").intValue()).isEqualTo(3);
    assertThat(root.at("/findings/0/evidence/seen/1").doubleValue()).isEqualTo(0.25);
    assertThat(root.at("/as_found/0/cams/0/decision").textValue()).isEqualTo("reject");
  }

  @Test
  void whatIsAbsentIsNullAndNeverZero() throws IOException {
    JsonNode root = tree(result());
    for (String absent :
        List.of(
            "/travel/open_stop",
            "/travel/lost_motion",
            "/recordings/0/strokes/0/coast",
            "/recordings/0/strokes/0/stroke_time_s",
            "/recordings/0/noise",
            "/changes/1/stroke",
            "/changes/1/reading",
            "/changes/1/u",
            "/cams/1/trip",
            "/cams/1/u",
            "/cams/1/probability",
            "/cams/1/differential",
            "/cams/1/adjust",
            "/contacts/0/worst_settle_s",
            "/ends/open/backoff/value",
            "/ends/open/margin",
            "/findings/0/time_s")) {
      assertThat(root.at(absent).isNull()).as(absent).isTrue();
    }
    assertThat(root.at("/cams/0/adjust/turns").doubleValue()).isEqualTo(-0.7);
  }

  @Test
  void theSameResultGivesTheSameBytesAndNumbersAreShort() throws IOException {
    assertThat(text(result())).isEqualTo(text(result()));
    assertThat(JsonNumber.of(0.1 + 0.2)).isEqualTo("0.3");
    assertThat(JsonNumber.of(31)).isEqualTo("31");
    assertThat(JsonNumber.of(-0.0)).isEqualTo("0");
    assertThat(JsonNumber.of(1 / 3.0)).isEqualTo("0.333333333");
    assertThat(JsonNumber.of(123456789.6)).isEqualTo("123456789.6");
    assertThat(JsonNumber.of(1e-12)).isEqualTo("1E-12");
    assertThat(JsonNumber.of(6.02214076e23)).isEqualTo("6.02214076E+23");
    assertThat(JsonNumber.of(0.00001)).isEqualTo("0.00001");
  }

  @Test
  void aResultIsAReferenceForTheNextOne() throws IOException {
    Path file = Files.writeString(folder.resolve("r.json"), text(result()));
    ReferenceFile read = ReferenceFile.read(file, SHEET);
    assertThat(read.source().sha256()).isEqualTo(ResultFile.read(file).sha256()).hasSize(64);
    Reference reference = read.reference();
    assertThat(reference.closedStop()).contains(new Reference.Stop(12.4, 0.01));
    assertThat(reference.openStop()).isEmpty();
    assertThat(reference.lostMotion()).isEmpty();
    assertThat(reference.changes())
        .containsExactly(
            new Reference.Seen("21-22", ContactState.OPEN, Direction.CLOSING, 12.9, 0.0125));
  }

  @Test
  void whatIsNoReferenceIsRefusedInOneLine() throws IOException {
    refused("{ \"format\": 1", ":1:", "not JSON");
    refused("[1]", ": is no result file");
    refused("{\"format\": 2, \"job\": {\"tag\": \"CW-114\"}}", "format 2, expected 1");
    refused("{\"format\": 1, \"job\": {\"tag\": \"CW-115\"}}", "a result of \"CW-115\"");
    refused("{\"format\": 1, \"job\": {}}", "job.tag is missing, expected a text");
    refused(
        "{\"format\": 1, \"job\": {\"tag\": \"CW-114\"}, \"travel\": {\"closed_stop\": {\"value\": \"x\"}}}",
        "travel.closed_stop.value is a text, expected a number");
    assertThatThrownBy(() -> ReferenceFile.read(folder.resolve("none.json"), SHEET))
        .isInstanceOf(InputFailure.class)
        .hasMessageEndingWith("none.json: no such file, expected a result file");
  }

  /** Stops are readings: twice as large or of another side they are other places. */
  @Test
  void aReferenceOfAnotherSensorIsRefused() throws IOException {
    String good = text(result());
    refused(
        good.replace("\"turns_per_unit\": 1,", "\"turns_per_unit\": 0.5,"),
        "was measured with 0.5 turns per unit of reading, expected 1.0 as in the sheet");
    refused(
        good.replace("\"turns_per_unit\": 1,", "\"turns_per_unit\": -1,"),
        "was measured with -1.0 turns per unit of reading, expected 1.0 as in the sheet");
    refused(
        good.replace("\"side\": \"handwheel\"", "\"side\": \"drive\""),
        "was measured on the drive side, expected the handwheel side as in the sheet");
  }

  /** Every place of a good file spoilt in turn by what does not belong there. */
  @Test
  void aSpoiltReferenceIsReadOrRefusedInOneLineAndNeverBreaks() throws IOException {
    Path file = folder.resolve("spoilt.json");
    int refused = 0;
    List<String> all = Spoilt.of(text(result()));
    for (int i = 0; i < all.size(); i += 5) {
      Files.writeString(file, all.get(i));
      try {
        ReferenceFile.read(file, SHEET);
      } catch (InputFailure e) {
        refused++;
        assertThat(e)
            .hasMessageStartingWith(file + ":")
            .hasMessageContaining("expected")
            .hasMessageNotContainingAny("\n", "\r", "\u202e");
      }
    }
    assertThat(refused).isGreaterThan(20);
  }

  private void refused(String text, String... says) throws IOException {
    Path file = Files.writeString(folder.resolve("bad.json"), text);
    assertThatThrownBy(() -> ReferenceFile.read(file, SHEET))
        .isInstanceOf(InputFailure.class)
        .hasMessageStartingWith(file.toString())
        .hasMessageContainingAll(says)
        .hasMessageNotContainingAny("\n", "\r");
  }

  private static void keys(JsonNode object, String contract) {
    List<String> stable = List.of(contract.split(" "));
    List<String> present = new ArrayList<>();
    object.fieldNames().forEachRemaining(present::add);
    present.retainAll(stable);
    assertThat(present).isEqualTo(stable);
  }

  private static JsonNode tree(Result result) throws IOException {
    return new ObjectMapper().readTree(text(result));
  }

  private static String text(Result result) throws IOException {
    StringWriter out = new StringWriter();
    ResultJson.write(result, FROM, out);
    return out.toString();
  }

  private static Result result() {
    Map<String, Object> evidence = new LinkedHashMap<>();
    evidence.put("strokes", 3);
    evidence.put("seen", List.of(0.5, 0.25));
    evidence.put("note", "x");
    List<CamResult> cams =
        List.of(
            new CamResult(
                "close",
                null,
                1.2,
                0.0125,
                0.0245,
                0.5,
                0.1,
                null,
                "closed",
                Decision.REJECT,
                0.0,
                FIGURE,
                2,
                0.001,
                1.25,
                1.2,
                FIGURE,
                new Adjust(-0.7, -252, "Move it.", List.of("isolate", "turn"))),
            new CamResult(
                "open",
                null,
                null,
                null,
                null,
                30.4,
                0.1,
                null,
                "open",
                Decision.UNDECIDED,
                null,
                null,
                0,
                null,
                null,
                null,
                null,
                null));
    List<ContactResult> contacts =
        List.of(
            new ContactResult(
                "21-22",
                "limit-closing",
                "close",
                Decision.ACCEPT,
                true,
                true,
                null,
                List.of(new Stretch(0.5, 31)),
                List.of(),
                List.of(new TripResult(null, "closing", "open", FIGURE, 2, 0.003))));
    EndsResult ends =
        new EndsResult(
            new EndResult(
                new Backoff(0.5, 0.0125, 0.0245, 0.5, 0.1, Decision.ACCEPT, 0.99, FIGURE),
                "limit",
                FIGURE,
                FIGURE,
                Decision.ACCEPT,
                1.0,
                Decision.ACCEPT),
            new EndResult(
                new Backoff(null, null, null, 0.6, 0.1, Decision.UNDECIDED, null, null),
                null,
                null,
                null,
                null,
                null,
                Decision.UNDECIDED));
    return new Result(
        Decision.UNDECIDED,
        "CW-114",
        List.of(
            new RecordingResult(
                "a.csv",
                "cd34",
                "hand",
                5_000_000_000L,
                55.25,
                500,
                Double.NaN,
                0.0005,
                new SamplingResult(500.0, null, 2, 0.5, null),
                List.of(
                    new StrokeResult(
                        0,
                        "closing",
                        31,
                        0,
                        1.5,
                        27.25,
                        true,
                        "hard-stop",
                        null,
                        null,
                        0,
                        new MotorResult(FIGURE, null, null, null, null, null))),
                new PathResult(List.of(new PathPoint(0, 0), new PathPoint(27.25, 31))))),
        new TravelResult(
            "closed-stop",
            0,
            new SensorResult("handwheel", 1, 0.001),
            new StopResult(12.4, 0.01, "mark"),
            null,
            FIGURE,
            null,
            null),
        List.of(new SettingResult(0, 0, 0, 10, false), new SettingResult(1, 0, 10, 55.25, true)),
        List.of(
            new ChangeResult(
                0, 0, 1, "21-22", "close", "open", "closing", false, 26.5, 12.9, 0.0125, 0.5,
                0.0125, 2, 0.003, FIGURE),
            new ChangeResult(
                0, null, 1, "21-22", "close", "closed", null, true, 40, null, null, null, null, 0,
                0, null),
            new ChangeResult(
                0, 0, 0, "21-22", "close", "open", "closing", false, 5, 13.5, 0.0125, 1.1, 0.0125,
                0, 0, FIGURE)),
        cams,
        contacts,
        ends,
        List.of(
            new FindingResult(
                "cam-early", "fault", null, "close", 0, 1, null, "early", evidence, "turn it")),
        List.of(new AsFound(0, cams, contacts, ends)));
  }
}
