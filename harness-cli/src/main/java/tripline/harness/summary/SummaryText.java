package tripline.harness.summary;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.TextLine;
import tripline.harness.report.TextStyle;
import tripline.measure.Decision;

/** The summary on a terminal, 79 columns wide. */
public final class SummaryText {
  private SummaryText() {}

  /** One line an actuator, worst first. */
  public static void write(Summary summary, TextStyle style, PrintWriter out) {
    TextLine line = new TextLine(style, out);
    line.head("DECISION", 10).head("TAG", 18).head("CLOSED", 9).head("OPEN", 9).head("MARGIN", 9);
    line.head("WORST FINDING", 16).head("HISTORY", 8).end();
    for (Actuator actuator : summary.actuators()) {
      ResultLine latest = actuator.latest();
      line.decision(latest.decision(), 10)
          .cell(actuator.tag(), 18)
          .cell(figure(latest.closed(), actuator.change(ResultLine::closed)), 9)
          .cell(figure(latest.open(), actuator.change(ResultLine::open)), 9)
          .cell(figure(latest.margin(), actuator.change(ResultLine::margin)), 9)
          .cell(latest.worst() == null ? "-" : latest.worst(), 16)
          .cell(actuator.history(), 8)
          .end();
    }
    out.println(
        "%d actuators, %d results: %d rejected, %d undecided, %d accepted"
            .formatted(
                summary.actuators().size(),
                summary.results(),
                summary.count(Decision.REJECT),
                summary.count(Decision.UNDECIDED),
                summary.count(Decision.ACCEPT)));
    if (summary.others() > 0 || !summary.damaged().isEmpty()) {
      out.println(
          "left out: %d files that are no results, %d that could not be read"
              .formatted(summary.others(), summary.damaged().size()));
    }
    out.println("Turns; + - grew or shrank since the first result, beyond 95 %; = did not.");
  }

  /** Its value and which way it went. */
  static String figure(@Nullable Figure figure, @Nullable Figure change) {
    if (figure == null) {
      return "-";
    }
    String way =
        change == null ? "" : !change.isSignificant() ? " =" : change.value() > 0 ? " +" : " -";
    return TextLine.figure(figure.value(), figure.u()) + way;
  }
}
