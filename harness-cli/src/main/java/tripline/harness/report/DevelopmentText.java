package tripline.harness.report;

import java.util.List;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.ContactResult;

/** The development as built, laid over the intended one: one row a contact. */
final class DevelopmentText {
  private static final int NAME = 8;
  private static final int ROLE = 15;
  private static final int MARGIN = 1 + NAME + ROLE;

  private DevelopmentText() {}

  static void write(Page page, Result result, JobSheet sheet) {
    if (result.travel().datum().equals("first-reading")) {
      page.blank();
      page.labelled(
          "DEVELOPMENT", 13, Ink.Tone.HEAD, "not drawn: no hard stop is known to lay it out from");
      return;
    }
    double span = span(result, sheet);
    TravelScale scale = TravelScale.of(sheet, span);
    page.blank();
    String ends = "closed" + " ".repeat(TravelScale.WIDTH - 10) + "open";
    page.row(Page.head("DEVELOPMENT", MARGIN), Page.cell(ends, TravelScale.WIDTH));
    page.line("  turns" + " ".repeat(MARGIN - 7) + labels(scale));
    page.line(" ".repeat(MARGIN) + scale.ticks(page.glyphs()));
    for (Contact contact : sheet.contacts()) {
      result.contacts().stream()
          .filter(c -> c.contact().equals(contact.name()))
          .findFirst()
          .ifPresent(c -> row(page, result, sheet, contact, c, scale));
    }
    page.line("  " + PairedBar.of(page.glyphs()).legend());
    notExercised(page, result);
  }

  private static void notExercised(Page page, Result result) {
    List<String> contacts =
        result.contacts().stream()
            .filter(c -> c.decision() == Decision.UNDECIDED && !c.exercised())
            .map(ContactResult::contact)
            .toList();
    if (!contacts.isEmpty()) {
      String who =
          contacts.size() == result.contacts().size() ? "all" : String.join(", ", contacts);
      page.labelled(
          "  ?",
          13,
          Ink.Tone.DOUBT,
          who + ": not seen to change in both directions; stroke past once more each way");
    }
  }

  /** The labels of the scale; the last one moves inward where it would leave the page. */
  private static String labels(TravelScale scale) {
    String labels = scale.turnLabels();
    int over = labels.length() - TravelScale.WIDTH;
    int last = labels.lastIndexOf(' ') + 1;
    return over > 0 && over <= last && labels.substring(last - over, last).isBlank()
        ? labels.substring(0, last - over) + labels.substring(last)
        : labels;
  }

  static double span(Result result, JobSheet sheet) {
    return result.travel().span() != null
        ? result.travel().span().value()
        : sheet.travel().spanTurns().orElse(TravelScale.assumedSpan(sheet));
  }

  private static void row(
      Page page,
      Result result,
      JobSheet sheet,
      Contact contact,
      ContactResult seen,
      TravelScale scale) {
    SeenStretches stretches = SeenStretches.of(result, seen);
    String bar =
        PairedBar.of(page.glyphs())
            .lay(
                scale.bar(IntendedChart.closed(sheet, contact, scale.span()), page.glyphs()),
                scale.bar(stretches.closed(), page.glyphs()),
                scale.bar(stretches.covered(), page.glyphs()));
    page.row(
        new Page.Cell(
            mark(seen) + page.fit(contact.name(), NAME - 1), NAME + 1, Page.tone(seen.decision())),
        Page.cell(contact.role().word(), ROLE),
        Page.cell(bar, TravelScale.WIDTH));
  }

  private static String mark(ContactResult contact) {
    return contact.decision() == Decision.REJECT
        ? "!"
        : contact.decision() == Decision.UNDECIDED ? "?" : " ";
  }
}
