package tripline.harness.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.harness.report.Columns;
import tripline.harness.report.FigureText;
import tripline.result.Result;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.Measured;

/** The last changes, newest first. */
record Changes(Result result, Speech speech) {
  /** More are never asked for. */
  private static final int MOST = 12;

  List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    lines.add(Line.of("LAST CHANGES", Look.STRONG));
    List<ChangeResult> changes = result.changes();
    for (int i = changes.size() - 1; i >= Math.max(0, changes.size() - MOST); i--) {
      lines.add(Line.of(" " + text(changes.get(i))));
    }
    if (changes.isEmpty()) {
      lines.add(Line.of(" none yet"));
    }
    return lines;
  }

  /** One change in words: when, what, where, which way. */
  private String text(ChangeResult change) {
    return clock(change.timeS()) + "  " + what(change);
  }

  /** The same without its time. */
  String what(ChangeResult change) {
    String name = Columns.fit(speech.safe(change.contact()), 8, speech.glyphs().cutMark());
    return name + (change.to().equals("open") ? " opened" : " closed") + "  " + where(change);
  }

  private String where(ChangeResult change) {
    Measured estimate = change.estimate();
    String place =
        estimate == null
            ? "position not known"
            : speech.own("at " + FigureText.interval(estimate.value(), estimate.u95()) + " turns");
    if (change.atRest()) {
      return place + ", at rest";
    }
    return change.direction() == null ? place : place + ", " + change.direction();
  }

  private static String clock(double seconds) {
    return String.format(
        Locale.ROOT, "%2d:%04.1f", (int) (seconds / 60), Math.floor(seconds % 60 * 10) / 10);
  }
}
