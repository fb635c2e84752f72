package tripline.harness.report;

import java.util.List;
import tripline.harness.report.Ink.Tone;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.Adjust;
import tripline.result.Result.CamResult;

/** What to turn, by how much and how, for every cam that is out of place. */
final class AdjustText {
  private static final int LABEL = 13;

  private AdjustText() {}

  /** Cams that are out of place and can be told where to go. */
  static List<CamResult> toTurn(Result result) {
    return result.cams().stream()
        .filter(c -> c.adjust() != null && c.decision() == Decision.REJECT)
        .toList();
  }

  static void write(Page page, Result result) {
    List<CamResult> wrong = toTurn(result);
    if (wrong.isEmpty()) {
      return;
    }
    page.blank();
    page.row(Page.head("WHAT TO TURN", Page.WIDTH));
    for (CamResult cam : wrong) {
      Adjust adjust = cam.adjust();
      if (adjust == null) {
        continue;
      }
      double half = cam.u95() == null ? 0 : cam.u95();
      page.labelled(
          "  " + page.fit(CamsText.name(cam), LABEL - 3).stripTrailing(),
          LABEL,
          Tone.HEAD,
          "move its trip point %s turns (%s of the handwheel) toward %s"
              .formatted(
                  Figures.decimals(Math.abs(adjust.turns()), Rounded.decimals(half)),
                  page.degrees(Math.abs(adjust.degrees())),
                  adjust.turns() < 0 ? "closed" : "open"));
      int number = 1;
      for (String step : adjust.steps()) {
        page.labelled("          " + number++ + ".", LABEL, Tone.BODY, step);
      }
    }
  }
}
