package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.harness.report.Ink.Tone;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.AsFound;
import tripline.result.Result.Backoff;
import tripline.result.Result.Measured;
import tripline.result.Result.StopResult;
import tripline.result.Result.TravelResult;

/** Backoff at both ends, as left and (where there was an adjustment) as found; the travel. */
final class EndsText {
  private static final int LABEL = 13;

  private EndsText() {}

  static void write(Page page, Result result) {
    boolean before = !result.asFound().isEmpty();
    page.blank();
    page.row(
        Page.head("BACKOFF", LABEL),
        Page.head("turns, 95 %", 16),
        Page.head("target", 15),
        Page.head("conforms", 10),
        Page.head("decision", 10),
        Page.head(before ? "as found" : "", 15));
    for (EndView end : EndView.both(result)) {
      Backoff backoff = end.result().backoff();
      page.row(
          Page.cell("  " + end.name(), LABEL),
          Page.cell(page.rounded().interval(backoff.value(), backoff.u95()), 16),
          Page.cell(page.rounded().target(backoff.target(), backoff.tolerance()), 15),
          Page.cell(Rounded.probability(backoff.probability()), 10),
          Page.decision(backoff.decision(), 10),
          before ? found(result, end) : Page.cell("", 15));
    }
    for (EndView end : EndView.both(result)) {
      if (end.result().backoff().decision() == Decision.UNDECIDED && !said(result, end)) {
        page.labelled(
            "  ? " + end.name(), LABEL, Tone.DOUBT, Undecided.why(page.rounded(), result, end));
      }
    }
    travel(page, result.travel());
  }

  /** A finding says already that the stop is not known, and what to do. */
  private static boolean said(Result result, EndView end) {
    return end.result().backoff().value() == null
        && result.findings().stream().anyMatch(f -> f.code().equals("stop-unknown"));
  }

  private static Page.Cell found(Result result, EndView end) {
    AsFound first = result.asFound().get(0);
    Backoff backoff = EndView.of(first.ends(), end.end()).backoff();
    return Page.found(backoff.value(), backoff.u95(), backoff.decision(), 15);
  }

  private static void travel(Page page, TravelResult travel) {
    List<String> parts = new ArrayList<>();
    Measured span = travel.span();
    if (span != null) {
      parts.add("span " + page.rounded().interval(span.value(), span.u95()));
    }
    lostMotion(page, travel).ifPresent(parts::add);
    parts.add("closed stop " + source(travel.closedStop()));
    parts.add("open stop " + source(travel.openStop()));
    if (!travel.datum().equals("closed-stop")) {
      parts.add("x counts from the " + travel.datum().replace('-', ' '));
    }
    page.labelled("  travel", LABEL, Tone.BODY, String.join("; ", parts));
  }

  /** The figure with what it stands for; where there is none, why. */
  private static Optional<String> lostMotion(Page page, TravelResult travel) {
    Measured lost = travel.lostMotion();
    String note = travel.lostMotionNote() == null ? "" : travel.lostMotionNote();
    if (lost == null) {
      return Optional.of(note).filter(n -> !n.isBlank()).map(EndsText::withoutStop);
    }
    String figure = page.rounded().interval(lost.value(), lost.u95());
    return Optional.of(
        note.startsWith("At most")
            ? "lost motion at most " + figure + ", a cam's differential included"
            : "lost motion " + figure + (note.isBlank() ? "" : " (" + withoutStop(note) + ")"));
  }

  private static String withoutStop(String note) {
    return note.endsWith(".") ? note.substring(0, note.length() - 1) : note;
  }

  private static String source(@org.jspecify.annotations.Nullable StopResult stop) {
    return stop == null ? "not known" : "by " + stop.source();
  }
}
