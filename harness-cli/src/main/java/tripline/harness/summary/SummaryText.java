package tripline.harness.summary;

import java.io.PrintWriter;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.TextLine;
import tripline.harness.report.TextStyle;
import tripline.job.End;
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
          .cell(figure(latest.closed().backoff(), actuator.backoffChange(End.CLOSED)), 9)
          .cell(figure(latest.open().backoff(), actuator.backoffChange(End.OPEN)), 9)
          .cell(figure(actuator.margin(), actuator.marginChange()), 9)
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
    leftOut(summary).ifPresent(words -> out.println("left out: " + words));
    out.println("Turns; + - grew or shrank beyond 95 %, = did not, since the first result or");
    out.println("the last adjustment, which HISTORY shows as |.");
  }

  /** How many files were no results or could not be read; nothing where there are none. */
  static Optional<String> leftOut(Summary summary) {
    int damaged = summary.damaged().size();
    return summary.others() == 0 && damaged == 0
        ? Optional.empty()
        : Optional.of(
            "%s, %d that could not be used"
                .formatted(
                    summary.others() == 1
                        ? "1 file that is no result"
                        : summary.others() + " files that are no results",
                    damaged));
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
