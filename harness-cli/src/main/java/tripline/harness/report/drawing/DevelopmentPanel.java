package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.report.FigureText;
import tripline.harness.report.IntendedChart;
import tripline.harness.report.PlannedTrip;
import tripline.harness.report.SeenStretches;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.Stretch;

/**
 * A stretch of the development chart, one row a contact: above what is intended, below it what was
 * built in the direction it is judged in, beneath as a thin line the other direction.
 */
final class DevelopmentPanel {
  private static final double BEGIN = 96;
  private static final double END = 350;
  private static final double TOP = 34;
  private static final double ROW = 29;

  private final JobSheet sheet;
  private final Result result;
  private final double span;
  private final Axis axis;
  private final Svg svg;
  private final String id;
  private final double bottom;

  private DevelopmentPanel(
      String id, String title, JobSheet sheet, Result result, double span, double from, double to) {
    this.id = id;
    this.sheet = sheet;
    this.result = result;
    this.span = span;
    this.axis = new Axis(from, to, BEGIN, END);
    this.bottom = TOP + ROW * sheet.contacts().size();
    this.svg = new Svg(id, bottom + 22, title, words());
  }

  /** Travel from one x to another, turns. */
  static String draw(
      String id, String title, JobSheet sheet, Result result, double span, double from, double to) {
    DevelopmentPanel panel = new DevelopmentPanel(id, title, sheet, result, span, from, to);
    panel.scale();
    double y = TOP;
    for (Contact contact : sheet.contacts()) {
      panel.row(contact, y);
      y += ROW;
    }
    return panel.svg.toString();
  }

  private String words() {
    List<String> rows = new ArrayList<>();
    for (Contact contact : sheet.contacts()) {
      String at =
          String.join(
              " and ",
              SeenTrip.of(result, contact.name(), seen(contact).direction()).stream()
                  .map(t -> FigureText.interval(t.x(), t.half()))
                  .toList());
      rows.add(
          "%s (%s) charted closed %s, %s"
              .formatted(
                  contact.name(),
                  contact.role().word(),
                  contact.closed().word(),
                  at.isEmpty() ? "not seen to change" : "changed at " + at + " turns"));
    }
    return "Travel from %.2f to %.2f turns. %s."
        .formatted(axis.from(), axis.to(), String.join("; ", rows));
  }

  private void scale() {
    svg.text(4, 12, "start", 9, "turns from").fill(Palette.DARK);
    svg.text(4, 23, "start", 9, "closed stop").fill(Palette.DARK);
    svg.text(4, bottom + 15, "start", 9, "per cent").fill(Palette.DARK);
    double step = axis.tickStep(5);
    for (double tick : axis.ticks(5)) {
      double x = axis.at(tick);
      svg.line(x, TOP - 6, x, bottom)
          .stroke(Palette.LIGHT, 0.8)
          .data("tick", tick)
          .data("panel", id);
      svg.text(clear(x), TOP - 11, "middle", 9.5, TravelOverTime.text(tick, step));
    }
    percent();
    for (double stop : new double[] {0, span}) {
      if (axis.holds(stop)) {
        double x = axis.at(stop);
        svg.rect(stop > 0 ? x : x - 3, TOP - 6, 3, bottom - TOP + 6)
            .fill(Palette.INK)
            .data("mark", "stop");
      }
    }
  }

  /** A scale of its own in per cent of span, so that its figures are round ones too. */
  private void percent() {
    Axis percent = new Axis(100 * axis.from() / span, 100 * axis.to() / span, BEGIN, END);
    double step = percent.tickStep(5);
    for (double tick : percent.ticks(5)) {
      double x = percent.at(tick);
      svg.line(x, bottom, x, bottom + 4).stroke(Palette.DARK, 0.8);
      svg.text(clear(x), bottom + 15, "middle", 9.5, TravelOverTime.text(tick, step));
    }
  }

  private static double clear(double x) {
    return Math.min(x, END - 8);
  }

  private SeenStretches seen(Contact contact) {
    return seen(contact.name())
        .map(c -> SeenStretches.of(result, c))
        .orElse(new SeenStretches("closing", List.of(), List.of()));
  }

  private java.util.Optional<ContactResult> seen(String contact) {
    return result.contacts().stream().filter(c -> c.contact().equals(contact)).findFirst();
  }

  private void row(Contact contact, double y) {
    Decision decision = decision(contact);
    String mark = decision == Decision.REJECT ? " !" : decision == Decision.UNDECIDED ? " ?" : "";
    svg.text(4, y + 10, "start", 10.5, Svg.fitted(contact.name() + mark, BEGIN - 8, 10.5))
        .set("font-weight", "bold");
    svg.text(4, y + 20, "start", 9, contact.role().word()).fill(Palette.DARK);
    svg.line(BEGIN, y + ROW - 3, END, y + ROW - 3).stroke(Palette.FAINT, 0.8);
    for (Stretch stretch : IntendedChart.closed(sheet, contact, span)) {
      bar(stretch, y + 1, 6).fill(Palette.LIGHT).stroke(Palette.MID, 0.7).data("mark", "intended");
    }
    SeenStretches judged = seen(contact);
    String other = judged.direction().equals("opening") ? "closing" : "opening";
    for (Stretch stretch : judged.closed()) {
      bar(stretch, y + 10, 6)
          .fill(Palette.ACCENT)
          .data("mark", "built")
          .data("contact", contact.name());
    }
    if (judged.covered().isEmpty()) {
      svg.text(BEGIN + 4, y + 17, "start", 9, "not exercised").set("font-style", "italic");
    }
    seen(contact.name())
        .map(c -> SeenStretches.in(other, result, c))
        .ifPresent(s -> s.closed().forEach(c -> bar(c, y + 18, 2.4).fill(Palette.DARK)));
    sheet.cams().stream()
        .filter(c -> c.name().equals(contact.cam()))
        .flatMap(c -> planned(c).stream())
        .filter(t -> axis.holds(t.x()))
        .forEach(t -> whisker(t.x(), t.tolerance(), y + 4, Palette.INK).data("mark", "planned"));
    for (SeenTrip trip : SeenTrip.of(result, contact.name(), judged.direction())) {
      if (axis.holds(trip.x())) {
        whisker(trip.x(), trip.half(), y + 13, Palette.INK)
            .data("mark", "trip")
            .data("panel", id)
            .data("contact", contact.name())
            .data("turns", trip.x());
      }
    }
  }

  /** A contact is as good as the trip points of its cam. */
  private Decision decision(Contact contact) {
    Decision decision =
        seen(contact.name()).map(ContactResult::decision).orElse(Decision.UNDECIDED);
    for (CamResult cam : result.cams()) {
      decision = cam.cam().equals(contact.cam()) ? decision.and(cam.decision()) : decision;
    }
    return decision;
  }

  private List<PlannedTrip> planned(Cam cam) {
    return IntendedChart.trips(sheet, cam, span);
  }

  private Element bar(Stretch stretch, double y, double height) {
    double from = axis.within(stretch.from());
    return svg.rect(from, y, axis.within(stretch.to()) - from, height);
  }

  /** A line with end caps over a paper-white one; the mark returned stands at its middle. */
  private Element whisker(double x, double half, double y, String colour) {
    double from = axis.within(x - half);
    double to = axis.within(x + half);
    svg.line(from, y, to, y).stroke(Palette.PAPER, 3);
    svg.line(from, y, to, y).stroke(colour, 1.1);
    svg.line(from, y - 2.5, from, y + 2.5).stroke(colour, 1.1);
    svg.line(to, y - 2.5, to, y + 2.5).stroke(colour, 1.1);
    return svg.line(axis.at(x), y - 4.5, axis.at(x), y + 4.5).stroke(colour, 1.6);
  }
}
