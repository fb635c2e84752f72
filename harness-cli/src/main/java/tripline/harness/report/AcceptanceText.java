package tripline.harness.report;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.Ink.Tone;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.Result;

/** Trip points over their strokes: where future trips will fall, and what that is worth. */
final class AcceptanceText {
  private static final int LABEL = 13;

  private AcceptanceText() {}

  static void write(Page page, Result result) {
    AcceptanceResult accepted = result.acceptance();
    if (accepted == null) {
      return;
    }
    AcceptanceWords words = new AcceptanceWords(accepted, page.rounded());
    page.blank();
    page.labelled("STROKES", LABEL, Tone.HEAD, words.asked());
    page.row(
        Page.head("", LABEL),
        Page.head("n", 4),
        Page.head("s", 9),
        Page.head("future trips", 16),
        Page.head("tolerance", 15),
        Page.head("inside", 10),
        Page.head("decision", 10));
    accepted.trips().forEach(t -> trip(page, t));
    new AcceptanceReasons(accepted, page.rounded())
        .byReason()
        .forEach((reason, cams) -> page.labelled("  ?", LABEL, Tone.DOUBT, cams + ": " + reason));
    StandOutWords standing = new StandOutWords(result, accepted);
    lines(page, "  ! outlier", Tone.DOUBT, standing.outliers());
    lines(page, "  ~ moves", Tone.DOUBT, standing.moves());
    line(page, "  inside", words.inside());
    line(page, "  factor", words.factors());
    line(page, "  widened", words.common());
    line(page, "  left out", words.aside());
  }

  /** How every contact repeats. */
  static void writeRepeats(Page page, Result result) {
    AcceptanceResult accepted = result.acceptance();
    if (accepted == null) {
      return;
    }
    RepeatsText.write(page, accepted, new StandOutWords(result, accepted));
    line(page, "  pooled", new AcceptanceWords(accepted, page.rounded()).repeatability());
  }

  private static void trip(Page page, AcceptedTrip trip) {
    @Nullable Double half = half(trip);
    page.row(
        Page.cell("  " + AcceptanceReasons.name(trip), LABEL),
        Page.cell(Integer.toString(trip.strokes()), 4),
        Page.cell(trip.sd() == null ? "-" : FigureText.uncertainty(trip.sd()), 9),
        Page.cell(half == null ? "-" : page.rounded().interval(trip.mean(), half), 16),
        Page.cell(page.rounded().target(trip.target(), trip.tolerance()), 15),
        Page.cell(AcceptanceWords.inside(trip), 10),
        trip.required() ? Page.decision(trip.decision(), 10) : Page.cell("not wired", 10));
  }

  private static @Nullable Double half(AcceptedTrip trip) {
    return trip.mean() == null || trip.to() == null ? null : trip.to() - trip.mean();
  }

  private static void line(Page page, String label, String text) {
    if (!text.isEmpty()) {
      page.labelled(label, LABEL, Tone.BODY, text);
    }
  }

  private static void lines(Page page, String label, Tone tone, List<String> texts) {
    texts.forEach(text -> page.labelled(label, LABEL, tone, text));
  }
}
