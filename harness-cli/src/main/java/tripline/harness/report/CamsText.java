package tripline.harness.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tripline.harness.report.Ink.Tone;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.CamResult;

/** One row a trip point: where it is, where it should be. */
final class CamsText {
  private static final int LABEL = 13;

  private CamsText() {}

  static void write(Page page, Result result) {
    boolean before = !result.asFound().isEmpty();
    page.blank();
    page.row(
        Page.head("CAM", LABEL),
        Page.head("trips at x, 95 %", 17),
        Page.head("target", 16),
        Page.head("off by", 8),
        Page.head("decision", 10),
        Page.head(before ? "as found" : "conforms", 15));
    for (CamResult cam : result.cams()) {
      page.row(
          Page.cell("  " + name(cam), LABEL),
          Page.cell(page.rounded().interval(cam.trip(), cam.u95()), 17),
          Page.cell(page.rounded().target(cam.target(), cam.tolerance()), 16),
          Page.cell(deviation(cam), 8),
          Page.decision(cam.decision(), 10),
          before ? found(result, cam) : Page.cell(Rounded.probability(cam.probability()), 15));
    }
    why(page, result);
  }

  /** Reasons, each once with the cams it holds for. */
  private static void why(Page page, Result result) {
    Map<String, List<String>> reasons = new LinkedHashMap<>();
    for (CamResult cam : result.cams()) {
      if (cam.decision() == Decision.UNDECIDED && !limitsAnUndecidedEnd(result, cam)) {
        reasons
            .computeIfAbsent(Undecided.why(page.rounded(), cam), r -> new ArrayList<>())
            .add(name(cam));
      }
    }
    reasons.forEach(
        (reason, cams) ->
            page.labelled("  ?", LABEL, Tone.DOUBT, String.join(", ", cams) + ": " + reason));
  }

  static String name(CamResult cam) {
    return cam.edge() == null ? cam.cam() : cam.cam() + " " + cam.edge();
  }

  private static String deviation(CamResult cam) {
    if (cam.trip() == null || cam.target() == null) {
      return "-";
    }
    return Rounded.signed(cam.trip() - cam.target(), cam.u95() == null ? 0 : cam.u95());
  }

  private static Page.Cell found(Result result, CamResult cam) {
    List<CamResult> earlier = result.asFound().get(0).cams();
    return earlier.stream()
        .filter(c -> c.cam().equals(cam.cam()) && Objects.equals(c.edge(), cam.edge()))
        .findFirst()
        .map(c -> Page.found(c.trip(), c.u95(), c.decision(), 15))
        .orElse(Page.cell("-", 15));
  }

  /** The end says already why, and for the same reason. */
  static boolean limitsAnUndecidedEnd(Result result, CamResult cam) {
    boolean limit =
        result.contacts().stream()
            .anyMatch(c -> c.cam().equals(cam.cam()) && c.role().startsWith("limit-"));
    return limit
        && EndView.both(result).stream()
            .anyMatch(
                e ->
                    e.name().equals(cam.from())
                        && e.result().backoff().decision() == Decision.UNDECIDED);
  }
}
