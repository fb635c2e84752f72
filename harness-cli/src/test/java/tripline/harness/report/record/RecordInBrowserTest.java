package tripline.harness.report.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.harness.report.Provenance;
import tripline.harness.report.Specimen;
import tripline.harness.report.record.RecordPage.Medium;
import tripline.job.JobSheet;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;

/**
 * The record as a browser lays it out: what is drawn gives back the figures it was drawn from,
 * nothing leaves the page or lies on something else, and hostile text stays text.
 */
class RecordInBrowserTest {
  private static final Provenance FROM =
      new Provenance(
          "cw114.toml",
          "ab".repeat(32),
          List.of(
              new Provenance.Made(
                  Optional.of(Instant.parse("2026-03-02T08:14:05Z")),
                  Optional.of("RL-8 0007, firmware 1.2"))));

  /** Strokes that all trip at the same place ... */
  private static final double SAME = 0.001;

  /** ... and such of which the chart draws the mean. */
  private static final double MEAN_OF_SCATTER = 0.02;

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({"390,early", "1280,powered", "390,adjusted", "390,coasting"})
  void drawsWhatWasFoundAndKeepsEverythingInItsPlace(int width, String name) throws Exception {
    Path chromium = Browser.found();
    Result result =
        switch (name) {
          case "early" -> Specimen.early();
          case "powered" -> Specimen.powered();
          case "coasting" -> Specimen.coasting();
          default -> Specimen.adjusted();
        };
    JsonNode seen =
        Browser.measure(
            chromium, folder, RecordPage.of(result, Specimen.sheet(), FROM, Medium.SCREEN), width);
    inPlace(seen, width);
    dials(seen, result);
    charts(seen, result, SAME);
  }

  /** Mean and interval of future trips lie where the scale says; an outlier wears a ring. */
  @ParameterizedTest
  @CsvSource({"390,accept-outlier", "1280,accept-few-strokes"})
  void drawsWhereFutureTripsFall(int width, String name) throws Exception {
    Path chromium = Browser.found();
    AcceptedCase it = AcceptedCase.of(name);
    JsonNode seen =
        Browser.measure(
            chromium, folder, RecordPage.of(it.result(), it.sheet(), FROM, Medium.SCREEN), width);
    inPlace(seen, width);
    dials(seen, it.result());
    charts(seen, it.result(), MEAN_OF_SCATTER);
    List<CamResult> cams = it.result().cams();
    for (int i = 0; i < cams.size(); i++) {
      AcceptedTrip trip = it.result().acceptance().trips().get(i);
      double target = cams.get(i).target();
      assertThat(turns(seen, "trips-" + i, "interval"))
          .containsExactly(trip.from() - target, trip.to() - target);
      assertThat(turns(seen, "trips-" + i, "mean")).containsExactly(trip.mean() - target);
    }
    long outliers =
        it.result().acceptance().trips().stream().filter(t -> "outlier".equals(t.reason())).count();
    assertThat(turns(seen, "trips-0", "outlier")).hasSize((int) outliers);
  }

  private static List<Double> turns(JsonNode seen, String panel, String mark) {
    List<Double> turns = new ArrayList<>();
    for (JsonNode one : seen.get("marks")) {
      if (one.get("panel").asText().equals(panel) && one.get("mark").asText().equals(mark)) {
        turns.add(one.get("turns").asDouble());
      }
    }
    return turns;
  }

  @ParameterizedTest
  @CsvSource({"390", "1280"})
  void hostileTextStaysText(int width) throws Exception {
    Path chromium = Browser.found();
    JobSheet sheet = Specimen.hostileSheet();
    Provenance from =
        new Provenance(
            Specimen.HOSTILE,
            Specimen.HOSTILE,
            List.of(new Provenance.Made(Optional.empty(), Optional.of(Specimen.HOSTILE))));
    String page = RecordPage.of(AcceptedCase.hostile(), sheet, from, Medium.SCREEN);
    // Without its policy the page has nothing but the escaping to protect it.
    String bare = page.replaceFirst("<meta http-equiv=\"Content-Security-Policy\"[^>]*/>", "");
    assertThat(bare).hasSizeLessThan(page.length());
    JsonNode seen = Browser.measure(chromium, folder, bare, width);
    inPlace(seen, width);
    assertThat(seen.get("title").asText()).startsWith("</title></svg><script>");
  }

  private static void inPlace(JsonNode seen, int width) {
    assertThat(seen.get("width").asInt()).isEqualTo(width);
    assertThat(seen.get("scroll").asInt()).as("width of the content").isLessThanOrEqualTo(width);
    for (String trouble : List.of("outside", "clipped", "overlaps", "suspicious", "nameless")) {
      assertThat(seen.get(trouble)).as(trouble).isEmpty();
    }
  }

  /** The tip of the needle, as an angle from the top, is the backoff in turns. */
  private static void dials(JsonNode seen, Result result) {
    assertThat(seen.get("dials")).hasSize(2);
    double[] backoffs = {
      result.ends().closed().backoff().value(), result.ends().open().backoff().value()
    };
    for (int i = 0; i < 2; i++) {
      JsonNode dial = seen.get("dials").get(i);
      double across = dial.get("tip").get(0).asDouble() - dial.get("centre").get(0).asDouble();
      double up = dial.get("centre").get(1).asDouble() - dial.get("tip").get(1).asDouble();
      double turns = dial.get("sense").asInt() * Math.atan2(across, up) / (2 * Math.PI);
      double off = (turns - backoffs[i]) - Math.rint(turns - backoffs[i]);
      assertThat(off * 2 * Math.PI * dial.get("radius").asDouble())
          .as("pixels along the rim")
          .isCloseTo(0, within(1.0));
    }
  }

  /** Marks lie where the tick marks around them say. */
  private static void charts(JsonNode seen, Result result, double near) {
    int checked = 0;
    for (JsonNode mark : seen.get("marks")) {
      String panel = mark.get("panel").asText();
      double turns = mark.get("turns").asDouble();
      if (panel.startsWith("chart-")) {
        isAt(seen, mark, "", 0, turns);
        assertThat(result.changes())
            .as("a change of that contact there")
            .anyMatch(c -> isOf(c, mark) && Math.abs(c.position() - turns) < near);
      } else {
        isAt(seen, mark, panel.startsWith("trips-") ? "" : "position", 1, turns);
      }
      if (mark.get("mark").asText().equals("change")) {
        isAt(seen, mark, "time", 0, mark.get("time").asDouble());
        assertThat(result.changes())
            .anyMatch(c -> isOf(c, mark) && c.timeS() == mark.get("time").asDouble());
      }
      checked++;
    }
    assertThat(checked).isGreaterThan(result.contacts().size() + result.changes().size());
  }

  private static boolean isOf(ChangeResult change, JsonNode mark) {
    return change.contact().equals(mark.get("contact").asText());
  }

  private static void isAt(JsonNode seen, JsonNode mark, String axis, int side, double figure) {
    JsonNode first = null;
    JsonNode last = null;
    for (JsonNode tick : seen.get("ticks")) {
      if (tick.get("panel").equals(mark.get("panel")) && tick.get("axis").asText().equals(axis)) {
        first = first == null ? tick : first;
        last = tick;
      }
    }
    assertThat(first).as("a scale beside " + mark).isNotNull().isNotEqualTo(last);
    double from = first.get("figure").asDouble();
    double share = (figure - from) / (last.get("figure").asDouble() - from);
    double begin = first.get("at").get(side).asDouble();
    double place = begin + share * (last.get("at").get(side).asDouble() - begin);
    assertThat(mark.get("at").get(side).asDouble())
        .as(mark.toString())
        .isCloseTo(place, within(1.0));
  }
}
