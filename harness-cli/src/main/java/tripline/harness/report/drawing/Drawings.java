package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.report.IntendedChart;
import tripline.harness.report.TravelScale;
import tripline.job.Cam;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.RecordingResult;

/** All drawings of a record. */
public final class Drawings {
  /** More of these than a page holds say no more than the worst do. */
  private static final int MOST_APPROACHES = 4;

  /** A drawing with its caption. */
  public record Figure(String svg, String caption) {}

  private final Result result;
  private final JobSheet sheet;
  private final double span;

  /** Drawings of a result and the sheet it was made from. */
  public Drawings(Result result, JobSheet sheet) {
    this.result = result;
    this.sheet = sheet;
    this.span =
        result.travel().span() != null
            ? result.travel().span().value()
            : sheet.travel().spanTurns().orElse(TravelScale.assumedSpan(sheet));
  }

  /** A dial an end. */
  public List<Figure> dials() {
    return List.of(
        new Figure(
            Dial.draw("dial-closed", End.CLOSED, result.ends().closed().backoff()), "Closed end"),
        new Figure(Dial.draw("dial-open", End.OPEN, result.ends().open().backoff()), "Open end"));
  }

  /** The development: the whole travel, then the last turns at both ends; none without a stop. */
  public List<Figure> development() {
    if (result.travel().datum().equals("first-reading")) {
      return List.of();
    }
    List<Figure> figures = new ArrayList<>();
    figures.add(panel("chart-whole", "Development, whole travel", 0, span));
    double closed = lastTurns(End.CLOSED);
    if (closed > 0) {
      figures.add(panel("chart-closed", "Development, last turns at the closed end", 0, closed));
    }
    double open = lastTurns(End.OPEN);
    if (open > 0) {
      figures.add(
          panel("chart-open", "Development, last turns at the open end", span - open, span));
    }
    return figures;
  }

  private Figure panel(String id, String title, double from, double to) {
    return new Figure(DevelopmentPanel.draw(id, title, sheet, result, span, from, to), title);
  }

  /** Turns to draw large at an end: all that is meant or found to trip near it; 0 for none. */
  private double lastTurns(End end) {
    double reach = 0;
    for (Cam cam : sheet.cams()) {
      for (var trip : IntendedChart.trips(sheet, cam, span)) {
        reach = Math.max(reach, near(end, trip.x(), trip.tolerance()));
      }
    }
    for (CamResult cam : result.cams()) {
      if (cam.trip() != null) {
        reach = Math.max(reach, near(end, cam.trip(), cam.u95() == null ? 0 : cam.u95()));
      }
    }
    double wide = 1.5 * reach;
    return wide < span / 3 ? wide : 0;
  }

  private double near(End end, double x, double half) {
    double distance = end == End.CLOSED ? x : span - x;
    return distance >= 0 && distance < 0.12 * span ? distance + half : 0;
  }

  /** One of each recording that has an outline. */
  public List<Figure> travel() {
    List<Figure> figures = new ArrayList<>();
    for (int r = 0; r < result.recordings().size(); r++) {
      RecordingResult recording = result.recordings().get(r);
      if (!recording.path().points().isEmpty()) {
        figures.add(
            new Figure(
                TravelOverTime.draw("travel-" + r, result, r, span),
                "Recording %d, by %s: %s".formatted(r + 1, recording.drive(), recording.file())));
      }
    }
    return figures;
  }

  /**
   * The last moments of every powered stroke of which they are known; where there are many, of the
   * one with the least margin at each end.
   */
  public List<Figure> approaches() {
    List<PoweredStrokes.One> strokes = PoweredStrokes.of(result);
    List<PoweredStrokes.One> drawn =
        strokes.size() <= MOST_APPROACHES ? strokes : PoweredStrokes.closest(strokes);
    String which = drawn.size() < strokes.size() ? ", the least margin" : "";
    List<Figure> figures = new ArrayList<>();
    for (PoweredStrokes.One one : drawn) {
      String caption =
          "Stroke %d, %s%s: run-out and margin"
              .formatted(one.number(), one.stroke().direction(), which);
      Approach.draw(
              "approach-" + one.number(), result, one.recording(), one.stroke(), span, one.number())
          .ifPresent(svg -> figures.add(new Figure(svg, caption)));
    }
    return figures;
  }

  /** One a trip point that was passed at least twice. */
  public List<Figure> trips() {
    List<Figure> figures = new ArrayList<>();
    for (int i = 0; i < result.cams().size(); i++) {
      CamResult cam = result.cams().get(i);
      String caption = "Cam " + cam.cam() + (cam.edge() == null ? "" : ", " + cam.edge() + " edge");
      TripsOverStrokes.draw("trips-" + i, result, cam)
          .ifPresent(svg -> figures.add(new Figure(svg, caption)));
    }
    return figures;
  }
}
