package tripline.harness.report;

import tripline.harness.report.Ink.Tone;
import tripline.result.Result;
import tripline.result.Result.FindingResult;

/** What is wrong or worth knowing, and what to do about it. */
final class FindingsText {
  private static final int LABEL = 11;

  private FindingsText() {}

  static void write(Page page, Result result) {
    if (result.findings().isEmpty()) {
      return;
    }
    page.blank();
    page.row(Page.head("FINDINGS", Page.WIDTH));
    for (FindingResult finding : result.findings()) {
      String text = finding.code() + ": " + finding.message();
      page.labelled("  " + word(finding.severity()), LABEL, tone(finding.severity()), text);
      if (!finding.action().isBlank() && !toldInFull(result, finding)) {
        page.labelled("", LABEL, Tone.BODY, "do: " + finding.action());
      }
    }
  }

  /** The procedure for a cam out of place stands further down. */
  private static boolean toldInFull(Result result, FindingResult finding) {
    return (finding.code().equals("cam-early") || finding.code().equals("cam-late"))
        && AdjustText.toTurn(result).stream().anyMatch(c -> c.cam().equals(finding.cam()));
  }

  private static String word(String severity) {
    return severity.equals("fault") ? "FAULT" : severity;
  }

  private static Tone tone(String severity) {
    return switch (severity) {
      case "fault" -> Tone.BAD;
      case "caution" -> Tone.DOUBT;
      default -> Tone.BODY;
    };
  }
}
