package tripline.harness.report.record;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import tripline.Version;
import tripline.harness.report.Provenance;
import tripline.harness.report.RecordWords;
import tripline.harness.report.SafeText;
import tripline.harness.report.drawing.Drawings;
import tripline.harness.report.drawing.Drawings.Figure;
import tripline.job.JobSheet;
import tripline.result.AcceptanceResult;
import tripline.result.Result;

/** The record as one page of well-formed markup. */
final class RecordPage {
  private static final List<String> SIGNATURES =
      List.of(
          "set and recorded (technician)",
          "judged (valve engineer)",
          "taken back into service (operator)");

  /** What the page is for. */
  enum Medium {
    SCREEN,
    /** Pages that each say at their foot which record they belong to. */
    PAPER
  }

  private static final int FOOT_TAG = 60;

  private RecordPage() {}

  static String of(Result result, JobSheet sheet, Provenance from, Medium medium) {
    Drawings drawings = new Drawings(result, sheet);
    Fields page = new Fields();
    head(page, result, sheet, from);
    String tag = SafeText.line(result.tag());
    page.flag("paged", medium == Medium.PAPER)
        .text("footTag", tag.length() > FOOT_TAG ? tag.substring(0, FOOT_TAG) + "…" : tag);
    page.list("recordings", RecordTables.recordings(result, from));
    powered(page, result, sheet, drawings);
    page.list("dials", figures(drawings.dials()))
        .list("ends", RecordTables.ends(result, sheet))
        .flag("adjusted", !result.asFound().isEmpty())
        .lines("undecided", "undecided", RecordWords.undecided(result))
        .list("development", figures(drawings.development()))
        .list("cams", RecordTables.cams(result))
        .list("contacts", RecordTables.contacts(result, sheet))
        .list("budgets", RecordTables.budgets(result));
    List<Figure> trips = drawings.trips();
    AcceptanceResult accepted = result.acceptance();
    acceptance(page, result, trips);
    page.list("travelFigures", figures(drawings.travel()))
        .list("tripFigures", accepted == null ? figures(trips) : List.of())
        .flag("hasTrips", accepted == null && !trips.isEmpty())
        .list("findings", RecordTables.findings(result))
        .list("adjustments", RecordTables.adjustments(result))
        .lines("signatures", "signature", SIGNATURES);
    return template().execute(page.map());
  }

  private static void head(Fields page, Result result, JobSheet sheet, Provenance from) {
    String verdict = RecordWords.verdict(result.decision());
    String because = String.join(", ", RecordWords.because(result));
    page.markup("style", text("record.css"))
        .text("tag", result.tag())
        .some("description", Optional.of(sheet.job().description()))
        .text("verdict", verdict)
        .markup("verdictSign", VerdictSign.of(result.decision()))
        .some("because", Optional.of(because).filter(b -> !b.isEmpty()).map(b -> "Because: " + b))
        .text("toSign", String.join("; ", SIGNATURES))
        .text("workOrder", sheet.job().workOrder().isBlank() ? "-" : sheet.job().workOrder())
        .text("jobFile", from.jobFile())
        .text("jobSha256", from.jobSha256())
        .text("version", Version.TEXT)
        .text("travel", RecordWords.travel(result));
  }

  private static void powered(Fields page, Result result, JobSheet sheet, Drawings drawings) {
    boolean powered = result.recordings().stream().anyMatch(r -> r.drive().equals("motor"));
    if (!powered) {
      page.flag("powered", false);
      return;
    }
    Fields section =
        new Fields()
            .list("ends", RecordTables.ends(result, sheet))
            .lines("strokes", "strokes", RecordWords.motorStrokes(result))
            .list("approaches", figures(drawings.approaches()));
    page.list("powered", List.of(section));
  }

  private static void acceptance(Fields page, Result result, List<Figure> trips) {
    AcceptanceResult accepted = result.acceptance();
    page.flag("accepting", accepted != null);
    if (accepted == null) {
      page.flag("acceptance", false);
      return;
    }
    Fields section =
        AcceptanceTables.of(result, accepted)
            .list("tripFigures", figures(trips))
            .flag("hasTrips", !trips.isEmpty());
    page.list("acceptance", List.of(section));
  }

  private static List<Fields> figures(List<Figure> figures) {
    return figures.stream()
        .map(f -> new Fields().text("caption", f.caption()).markup("svg", f.svg()))
        .toList();
  }

  private static Template template() {
    return Mustache.compiler().compile(text("record.html"));
  }

  private static String text(String resource) {
    try (InputStream in = RecordPage.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException(resource + " is not among the program's resources");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
