package tripline.harness.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.compare.CamMove;
import tripline.compare.Comparison;
import tripline.compare.EndMove;
import tripline.compare.Movement;
import tripline.compare.Seen;
import tripline.compare.TripMove;
import tripline.harness.report.Ink.Tone;
import tripline.job.Direction;

/** A comparison on one screen, 79 columns wide. */
public final class CompareText {
  private static final int LABEL = 17;
  private static final int FIGURE = 9;
  private static final int MOVE = 18;
  private static final int SEEN = Page.WIDTH - LABEL - 2 * FIGURE - 2 * MOVE;
  private static final int VERDICT = 14;
  private static final int MOST_TAG = 30;

  private final Page page;
  private final ComparedFiles files;
  private final Comparison comparison;

  private CompareText(ComparedFiles files, Page page) {
    this.page = page;
    this.files = files;
    this.comparison = files.comparison();
  }

  /** Writes it. */
  public static void write(ComparedFiles files, TextStyle style, PrintWriter out) {
    new CompareText(files, new Page(style, out)).write();
  }

  private void write() {
    head();
    cams();
    ends();
    contacts();
    paragraphs("SHEET", comparison.sheet().stream().map(CompareWords::difference).toList());
    paragraphs("NOTES", CompareWords.notes(files));
    CompareWords.method(comparison)
        .ifPresent(
            text -> {
              page.blank();
              page.labelled("", 0, Tone.BODY, text);
            });
  }

  private void head() {
    String tag = page.fit(comparison.after().tag(), MOST_TAG).stripTrailing() + "   ";
    String verdict = Columns.fit(CompareWords.verdict(comparison), VERDICT, "");
    page.labelled(
        verdict + tag,
        VERDICT + Columns.width(tag),
        tone(comparison.answer()),
        CompareWords.sentence(comparison));
    page.labelled("  before", VERDICT, Tone.BODY, files.before().file() + files.before().words());
    page.labelled("  after", VERDICT, Tone.BODY, files.after().file() + files.after().words());
  }

  private void cams() {
    page.blank();
    row("CAM, trips at x", "before", "after", "moved, 95 %", "against others", "");
    for (CamMove cam : comparison.cams()) {
      page.row(
          Page.cell("  " + cam.name(), LABEL),
          Page.cell(CompareWords.figure(cam.move().before()), FIGURE),
          Page.cell(CompareWords.figure(cam.move().after()), FIGURE),
          Page.cell(CompareWords.signed(page.rounded(), cam.move().by()), MOVE),
          Page.cell(CompareWords.signed(page.rounded(), cam.againstOthers()), MOVE),
          seen(cam.seen()));
    }
  }

  private void ends() {
    page.blank();
    row("END, turns", "before", "after", "changed, 95 %", "", "");
    for (EndMove end : comparison.ends()) {
      figure(end.end().word() + " backoff", end.backoff());
      figure(end.end().word() + " coast", end.coast());
      figure(end.end().word() + " margin", end.margin());
    }
    figure("span", comparison.span());
    figure("lost motion", comparison.lostMotion());
  }

  private void figure(String name, Movement move) {
    if (move.before().isEmpty() && move.after().isEmpty()) {
      return;
    }
    page.row(
        Page.cell("  " + name, LABEL),
        Page.cell(CompareWords.figure(move.before()), FIGURE),
        Page.cell(CompareWords.figure(move.after()), FIGURE),
        Page.cell(CompareWords.signed(page.rounded(), move.by()), MOVE),
        Page.cell("", MOVE),
        seen(move.seen()));
  }

  private void row(String... heads) {
    int[] columns = {LABEL, FIGURE, FIGURE, MOVE, MOVE, SEEN};
    Page.Cell[] cells = new Page.Cell[heads.length];
    for (int i = 0; i < heads.length; i++) {
      cells[i] = Page.head(heads[i], columns[i]);
    }
    page.row(cells);
  }

  private static Page.Cell seen(Seen seen) {
    return new Page.Cell(
        switch (seen) {
          case MOVED -> "MOVED";
          case NO_MOVE -> "not seen";
          case NOT_KNOWN -> "unknown";
        },
        SEEN,
        tone(seen));
  }

  private static Tone tone(Seen seen) {
    return switch (seen) {
      case MOVED -> Tone.BAD;
      case NO_MOVE -> Tone.GOOD;
      case NOT_KNOWN -> Tone.DOUBT;
    };
  }

  private void contacts() {
    page.blank();
    page.row(
        Page.head("CONTACT", LABEL),
        Page.head("on cam", 2 * FIGURE),
        Page.head("opening, 95 %", MOVE + 5),
        Page.head("closing, 95 %", MOVE + 4));
    List<String> done = new ArrayList<>();
    for (TripMove trip : comparison.trips()) {
      String name = trip.contact() + trip.edge().map(" "::concat).orElse("");
      if (!done.contains(name)) {
        done.add(name);
        page.row(
            Page.cell("  " + name, LABEL),
            Page.cell(trip.cam(), 2 * FIGURE),
            direction(trip, Direction.OPENING, MOVE + 5),
            direction(trip, Direction.CLOSING, MOVE + 4));
      }
    }
  }

  private Page.Cell direction(TripMove of, Direction direction, int columns) {
    Optional<Movement> move =
        comparison.trips().stream()
            .filter(t -> t.contact().equals(of.contact()) && t.edge().equals(of.edge()))
            .filter(t -> t.direction() == direction)
            .map(TripMove::move)
            .findFirst();
    boolean moved = move.filter(m -> m.seen() == Seen.MOVED).isPresent();
    String text = CompareWords.signed(page.rounded(), move.flatMap(Movement::by));
    return new Page.Cell(text + (moved ? " !" : ""), columns, moved ? tone(Seen.MOVED) : Tone.BODY);
  }

  private void paragraphs(String head, List<String> texts) {
    if (texts.isEmpty()) {
      return;
    }
    page.blank();
    page.row(Page.head(head, Page.WIDTH));
    texts.forEach(text -> page.labelled("  -", 4, Tone.BODY, text));
  }
}
