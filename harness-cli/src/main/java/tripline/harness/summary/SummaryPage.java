package tripline.harness.summary;

import com.samskivert.mustache.Mustache;
import java.io.IOException;
import java.io.InputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.FigureText;
import tripline.harness.report.SafeText;
import tripline.job.End;
import tripline.measure.Decision;

/** The summary as one self-contained page without script. */
public final class SummaryPage {
  private SummaryPage() {}

  /**
   * Writes the page, row by row.
   *
   * @throws IOException if the writer refuses
   */
  public static void write(Summary summary, Writer out) throws IOException {
    Map<String, Object> page = new HashMap<>();
    page.put("actuators", summary.actuators().size());
    page.put("results", summary.results());
    page.put("rejected", summary.count(Decision.REJECT));
    page.put("undecided", summary.count(Decision.UNDECIDED));
    page.put("accepted", summary.count(Decision.ACCEPT));
    page.put("leftOut", SummaryText.leftOut(summary).<Object>map(w -> w).orElse(false));
    page.put(
        "rows",
        (Iterable<Object>)
            () -> summary.actuators().stream().<Object>map(SummaryPage::row).iterator());
    Mustache.compiler().compile(template()).execute(page, out);
  }

  private static Map<String, String> row(Actuator actuator) {
    ResultLine latest = actuator.latest();
    Map<String, String> row = new HashMap<>();
    row.put("decision", FigureText.word(latest.decision()));
    row.put("tag", SafeText.line(actuator.tag()));
    row.put("closed", figure(latest.closed().backoff(), actuator.backoffChange(End.CLOSED)));
    row.put("open", figure(latest.open().backoff(), actuator.backoffChange(End.OPEN)));
    row.put("margin", figure(actuator.margin(), actuator.marginChange()));
    row.put("worst", latest.worst() == null ? "-" : SafeText.line(latest.worst()));
    row.put("faults", Integer.toString(latest.faults()));
    row.put("cautions", Integer.toString(latest.cautions()));
    row.put("history", actuator.history());
    row.put("file", SafeText.line(latest.file()));
    row.put("when", latest.when().toString());
    return row;
  }

  private static String figure(@Nullable Figure figure, @Nullable Figure change) {
    return SummaryText.figure(figure, change).replace('-', figure == null ? '-' : '−');
  }

  private static String template() throws IOException {
    try (InputStream in = SummaryPage.class.getResourceAsStream("summary.html")) {
      if (in == null) {
        throw new IllegalStateException("summary.html is not among the program's resources");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
