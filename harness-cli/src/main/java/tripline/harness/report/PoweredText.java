package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.Ink.Tone;
import tripline.job.JobSheet;
import tripline.job.Seat;
import tripline.result.Result;
import tripline.result.Result.EndResult;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.StrokeResult;

/** Strokes under power: margin and what stopped them. Nothing where all was done by hand. */
final class PoweredText {
  private static final int MOST_STROKES = 4;

  private PoweredText() {}

  /** A stroke and its number, counted from 1 over all recordings. */
  private record Numbered(int number, StrokeResult stroke) {}

  private static List<Numbered> strokes(Result result) {
    List<Numbered> strokes = new ArrayList<>();
    int number = 0;
    for (RecordingResult recording : result.recordings()) {
      for (StrokeResult stroke : recording.strokes()) {
        number++;
        if (stroke.motor() != null) {
          strokes.add(new Numbered(number, stroke));
        }
      }
    }
    return strokes;
  }

  static void write(Page page, Result result, JobSheet sheet) {
    List<Numbered> strokes = strokes(result);
    if (strokes.isEmpty()) {
      return;
    }
    page.blank();
    page.row(
        Page.head("UNDER POWER", 13),
        Page.head("margin, turns", 16),
        Page.head("coast, turns", 18),
        Page.head("margin > 0", 11),
        Page.head("decision", 11),
        Page.head("stopped by", 13));
    for (EndView end : EndView.both(result)) {
      row(page, end, sheet.end(end.end()).seat());
    }
    strokes.stream().limit(MOST_STROKES).forEach(s -> stroke(page, s));
    if (strokes.size() > MOST_STROKES) {
      page.line("             and " + (strokes.size() - MOST_STROKES) + " more strokes");
    }
  }

  private static void row(Page page, EndView view, Seat seat) {
    EndResult end = view.result();
    boolean strange =
        end.stoppedBy() != null
            && !end.stoppedBy().equals(seat == Seat.TORQUE ? "torque" : "limit");
    page.row(
        Page.cell("  " + view.name(), 13),
        Page.cell(margin(page, end, seat), 16),
        Page.cell(text(page, end.coast()), 18),
        Page.cell(Rounded.probability(end.marginProbability()), 11),
        end.marginDecision() == null ? Page.cell("-", 11) : Page.decision(end.marginDecision(), 11),
        new Page.Cell(
            stopped(end.stoppedBy()) + (strange ? " !" : ""),
            13,
            strange && !"unknown".equals(end.stoppedBy()) ? Tone.BAD : Tone.BODY));
  }

  private static String margin(Page page, EndResult end, Seat seat) {
    if (end.margin() != null) {
      return text(page, end.margin());
    }
    return seat == Seat.TORQUE
        ? "seats on torque"
        : end.stoppedBy() == null ? "not run" : "not known";
  }

  static String stopped(@Nullable String by) {
    return by == null ? "-" : by.replace('-', ' ');
  }

  private static String text(Page page, @Nullable Measured figure) {
    return figure == null ? "-" : page.rounded().interval(figure.value(), figure.u95());
  }

  private static void stroke(Page page, Numbered numbered) {
    StrokeResult stroke = numbered.stroke();
    List<String> parts = new ArrayList<>();
    String time =
        stroke.strokeTimeS() == null ? "" : " " + Figures.decimals(stroke.strokeTimeS(), 1) + " s";
    parts.add(stroke.direction() + time);
    MotorResult motor = stroke.motor();
    if (motor != null && motor.runTurnsPerS() != null) {
      Measured speed = motor.runTurnsPerS();
      parts.add(Figures.decimals(speed.value(), Rounded.decimals(speed.u95())) + " turns/s");
    }
    parts.add("by " + stopped(stroke.stoppedBy()));
    if (motor != null && motor.margin() != null) {
      parts.add("margin " + text(page, motor.margin()));
    }
    page.labelled("  stroke " + numbered.number(), 13, Tone.BODY, String.join(", ", parts));
  }
}
