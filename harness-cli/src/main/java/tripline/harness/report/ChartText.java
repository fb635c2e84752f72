package tripline.harness.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tripline.harness.jobfile.JobFile;
import tripline.harness.jobfile.SheetNote;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.JobSheet;

/** The intended development of a sheet as text, within 80 columns. */
public final class ChartText {
  private static final int WIDTH = 79;
  private static final int NAME = 9;
  private static final int ROLE = 15;
  private static final String MARGIN = " ".repeat(NAME + ROLE);

  private final JobFile file;
  private final JobSheet sheet;
  private final Glyphs glyphs;
  private final PrintWriter out;

  private ChartText(JobFile file, Glyphs glyphs, PrintWriter out) {
    this.file = file;
    this.sheet = file.sheet();
    this.glyphs = glyphs;
    this.out = out;
  }

  /** Draws a sheet and states every doubt about it. */
  public static void write(JobFile file, Glyphs glyphs, PrintWriter out) {
    ChartText chart = new ChartText(file, glyphs, out);
    chart.title();
    chart.drawing();
    ChartTables.write(file.sheet(), glyphs, out);
    chart.doubts();
  }

  private void title() {
    String order = sheet.job().workOrder().isEmpty() ? "" : "  order " + sheet.job().workOrder();
    String tag = sheet.job().tag() + "  ";
    int room = Math.max(1, WIDTH - tag.length() - order.length());
    out.println((tag + glyphs.fit(sheet.job().description(), room) + order).stripTrailing());
    OptionalDouble span = sheet.travel().spanTurns();
    String turns =
        span.isEmpty()
            ? "span not stated, drawn as %s turns and not to scale"
                .formatted(Figures.text(TravelScale.assumedSpan(sheet)))
            : "span " + Figures.text(span.getAsDouble()) + tolerance() + " handwheel turns";
    out.println("Intended development: " + turns);
    out.println();
  }

  private String tolerance() {
    OptionalDouble tolerance = sheet.travel().spanToleranceTurns();
    return tolerance.isEmpty()
        ? ""
        : " " + glyphs.plusMinus() + " " + Figures.text(tolerance.getAsDouble());
  }

  private void drawing() {
    double span = sheet.travel().spanTurns().orElse(TravelScale.assumedSpan(sheet));
    TravelScale scale = TravelScale.of(sheet, span);
    out.println(MARGIN + "closed" + " ".repeat(TravelScale.WIDTH - 10) + "open");
    out.println("turns" + MARGIN.substring(5) + scale.turnLabels());
    out.println(MARGIN + scale.ticks(glyphs));
    for (Cam cam : sheet.cams()) {
      String marks = scale.marks(IntendedChart.trips(sheet, cam, span), glyphs);
      out.println(glyphs.fit("cam " + cam.name(), NAME + ROLE - 1) + " " + marks);
      for (Contact contact : sheet.contacts()) {
        if (contact.cam().equals(cam.name())) {
          out.println(
              glyphs.fit(contact.name(), NAME - 1)
                  + " "
                  + glyphs.fit(contact.role().word(), ROLE)
                  + scale.bar(IntendedChart.closed(sheet, contact, span), glyphs));
        }
      }
    }
    out.println(MARGIN + scale.ticks(glyphs));
    out.println("% of span" + MARGIN.substring(9) + scale.percentLabels());
    out.println();
    legend(scale);
  }

  private void legend(TravelScale scale) {
    List<String> signs = new ArrayList<>();
    signs.add(glyphs.closed() + " closed");
    signs.add(glyphs.open() + " open");
    signs.add(glyphs.bandFrom() + glyphs.trip() + glyphs.bandTo() + " trip point, tolerance");
    signs.add(glyphs.stop() + " hard stop");
    if (scale.isBroken()) {
      signs.add(glyphs.scaleBreak() + " scale changes");
    }
    out.println(String.join("   ", signs));
  }

  private void doubts() {
    out.println();
    if (file.doubts().isEmpty()) {
      out.println("No doubts about this sheet.");
      return;
    }
    int count = file.doubts().size();
    out.println(count + (count == 1 ? " doubt" : " doubts") + " about this sheet:");
    for (SheetNote doubt : file.doubts()) {
      String line = "  line %d: %s".formatted(doubt.line(), doubt.message());
      Wrapped.lines(line, WIDTH, "    ").forEach(out::println);
    }
  }
}
