package tripline.harness.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.AcceptanceResult.StandOutResult;
import tripline.result.Result;

/** Outliers and movements over strokes, in sentences that the terminal and the record share. */
public final class StandOutWords {
  private final Result result;
  private final AcceptanceResult accepted;

  /** Sentences of one acceptance. */
  public StandOutWords(Result result, AcceptanceResult accepted) {
    this.result = result;
    this.accepted = accepted;
  }

  /** Outliers, those of one stroke together. */
  public List<String> outliers() {
    Map<String, List<String>> contacts = new LinkedHashMap<>();
    for (StandOutResult found : accepted.standOuts()) {
      series(found)
          .filter(s -> found.kind().equals("outlier"))
          .map(SeriesResult::outlier)
          .ifPresent(
              o ->
                  contacts
                      .computeIfAbsent(stroke(found, o), k -> new ArrayList<>())
                      .add(outlier(found, o)));
    }
    return contacts.entrySet().stream()
        .map(
            e ->
                "%s: %s. Grubbs at 1 %%; kept in every figure."
                    .formatted(e.getKey(), String.join("; ", e.getValue())))
        .toList();
  }

  private String stroke(StandOutResult found, OutlierResult outlier) {
    int number = StrokeNumbers.of(result, outlier.recording(), outlier.stroke());
    return "Stroke %d, %s".formatted(number, found.direction());
  }

  private static String outlier(StandOutResult found, OutlierResult outlier) {
    return "%s at %s, %s from the others (G = %s, above %s)"
        .formatted(
            found.contact(),
            Figures.decimals(outlier.position(), 3),
            signed(found.turns()),
            Figures.decimals(outlier.g(), 3),
            Figures.decimals(outlier.criticalOne(), 3));
  }

  /** Trip points that drift or step, the contacts of a cam together. */
  public List<String> moves() {
    Map<String, List<String>> contacts = new LinkedHashMap<>();
    for (StandOutResult found : accepted.standOuts()) {
      if (!found.kind().equals("outlier")) {
        String edge = found.edge() == null ? "" : " " + found.edge();
        contacts
            .computeIfAbsent(
                "Cam %s%s, %s".formatted(found.cam(), edge, found.direction()),
                k -> new ArrayList<>())
            .add(found.contact() + " " + move(found));
      }
    }
    return contacts.entrySet().stream()
        .map(e -> "%s: %s.".formatted(e.getKey(), String.join("; ", e.getValue())))
        .toList();
  }

  private String move(StandOutResult found) {
    String chance = "chance " + chance(found.chance());
    if (found.kind().equals("drift")) {
      int strokes = series(found).map(SeriesResult::strokes).orElse(0);
      return "drifts by %s turn over %d strokes, %s"
          .formatted(signed(found.turns()), strokes, chance);
    }
    String after =
        series(found)
            .map(SeriesResult::step)
            .map(s -> " after its " + HeadText.counted(s.after(), "first stroke"))
            .orElse("");
    return "steps by %s turn%s, %s".formatted(signed(found.turns()), after, chance);
  }

  /** {@code !} for an outlier, {@code ?} for a straggler, {@code ~} for what moves. */
  public String mark(SeriesResult series) {
    String grade = series.outlier() == null ? "none" : series.outlier().grade();
    String outlier = grade.equals("outlier") ? "!" : grade.equals("straggler") ? "?" : "";
    boolean moves =
        accepted.standOuts().stream().anyMatch(f -> !f.kind().equals("outlier") && isOf(f, series));
    return outlier + (moves ? "~" : "");
  }

  private Optional<SeriesResult> series(StandOutResult found) {
    return accepted.series().stream().filter(s -> isOf(found, s)).findFirst();
  }

  private static boolean isOf(StandOutResult found, SeriesResult series) {
    return series.contact().equals(found.contact())
        && series.direction().equals(found.direction())
        && Objects.equals(series.edge(), found.edge());
  }

  private static String signed(double turns) {
    String text = Figures.text(turns, 2);
    return turns > 0 ? "+" + text : text;
  }

  private static String chance(double p) {
    return p < 0.0001 ? "< 0.01 %" : Figures.text(100 * p, 2) + " %";
  }
}
