package tripline.harness.report;

import java.io.PrintWriter;
import java.util.OptionalDouble;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobSheet;
import tripline.job.Seat;
import tripline.job.TripPlan;

/** The figures of a sheet beneath its drawing: what each cam, contact and end is to do. */
final class ChartTables {
  private final JobSheet sheet;
  private final Glyphs glyphs;
  private final PrintWriter out;

  private ChartTables(JobSheet sheet, Glyphs glyphs, PrintWriter out) {
    this.sheet = sheet;
    this.glyphs = glyphs;
    this.out = out;
  }

  static void write(JobSheet sheet, Glyphs glyphs, PrintWriter out) {
    out.println();
    ChartTables tables = new ChartTables(sheet, glyphs, out);
    tables.cams();
    out.println();
    tables.contacts();
    out.println();
    tables.ends();
  }

  private void cams() {
    row("cam", "trip point, turns", "per cent of span", "from", "judged");
    for (Cam cam : sheet.cams()) {
      for (TripPlan plan : IntendedChart.plans(sheet, cam)) {
        row(
            cam.name(),
            inTurns(plan),
            inPercent(plan),
            plan.from().word(),
            plan.from().approach().word());
      }
    }
  }

  private void row(String cam, String turns, String percent, String from, String judged) {
    line(cell(cam, 16) + cell(turns, 20) + cell(percent, 20) + cell(from, 10) + judged);
  }

  private String inTurns(TripPlan plan) {
    OptionalDouble span = sheet.travel().spanTurns();
    if (plan.unit() == TripPlan.Unit.PERCENT && span.isEmpty()) {
      return "needs the span";
    }
    double turns = span.orElse(0);
    return figure(plan.distanceTurns(turns), plan.toleranceTurns(turns));
  }

  private String inPercent(TripPlan plan) {
    OptionalDouble span = sheet.travel().spanTurns();
    if (plan.unit() == TripPlan.Unit.PERCENT) {
      return figure(plan.distance(), plan.tolerance(), 4);
    }
    return span.isEmpty()
        ? "needs the span"
        : figure(
            plan.distance() / span.getAsDouble() * 100,
            plan.tolerance() / span.getAsDouble() * 100,
            3);
  }

  private String figure(double value, double tolerance) {
    return figure(value, tolerance, 4);
  }

  private String figure(double value, double tolerance, int digits) {
    return Figures.text(value, digits)
        + " "
        + glyphs.plusMinus()
        + " "
        + Figures.text(tolerance, digits);
  }

  private void contacts() {
    contact("contact", "channel", "role", "cam", "closed");
    for (Contact contact : sheet.contacts()) {
      String covers =
          contact.coversPercent().isEmpty()
              ? ""
              : ", covers " + Figures.text(contact.coversPercent().getAsDouble()) + " %";
      contact(
          contact.name(),
          contact.channel(),
          contact.role().word(),
          contact.cam(),
          contact.closed().word() + covers);
    }
    for (End end : End.values()) {
      sheet
          .torque(end)
          .ifPresent(c -> other("torque " + end.approach().word(), c, "opens on torque"));
      sheet
          .motor(end)
          .ifPresent(c -> other("motor " + end.approach().word(), c, "closed while it runs"));
    }
  }

  private void contact(String name, String channel, String role, String cam, String closed) {
    line(cell(name, 16) + cell(channel, 10) + cell(role, 16) + cell(cam, 13) + closed);
  }

  private void other(String name, String channel, String does) {
    line(cell(name, 16) + cell(channel, 10) + does);
  }

  private void ends() {
    line(
        cell("end", 16)
            + cell("backoff, turns", 20)
            + cell("u of hard stop", 20)
            + "motor stops on");
    for (End end : End.values()) {
      EndSetting setting = sheet.end(end);
      line(
          cell(end.word(), 16)
              + cell(figure(setting.backoffTurns(), setting.toleranceTurns()), 20)
              + cell(Figures.text(setting.stopUTurns()), 20)
              + (setting.seat() == Seat.TORQUE ? "torque" : "limit")
              + (judged(end) ? "" : "; no limit contact"));
    }
  }

  private String cell(String text, int width) {
    return glyphs.fit(text, width - 1) + " ";
  }

  private boolean judged(End end) {
    return sheet.contacts().stream()
        .anyMatch(c -> c.role().limitOf().filter(end::equals).isPresent());
  }

  private void line(String text) {
    out.println(text.stripTrailing());
  }
}
