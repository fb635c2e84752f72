package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.StrokeResult;
import tripline.result.Result.TravelResult;

/** Sentences that the record shares with the answer on the terminal. */
public final class RecordWords {
  private static final Rounded ROUNDED = new Rounded("±");

  private RecordWords() {}

  /** {@code ACCEPTED}, {@code REJECTED} or {@code UNDECIDED}. */
  public static String verdict(Decision decision) {
    return HeadText.verdict(decision);
  }

  /** On whose account it is not accepted; empty where it is. */
  public static List<String> because(Result result) {
    return HeadText.why(result);
  }

  /** Why each undecided figure is so, and what would decide it. */
  public static List<String> undecided(Result result) {
    List<String> lines = new ArrayList<>();
    for (EndView end : EndView.both(result)) {
      if (end.result().backoff().decision() == Decision.UNDECIDED) {
        lines.add(
            "Undecided, %s end: %s.".formatted(end.name(), Undecided.why(ROUNDED, result, end)));
      }
    }
    for (CamResult cam : result.cams()) {
      if (cam.decision() == Decision.UNDECIDED && !CamsText.limitsAnUndecidedEnd(result, cam)) {
        lines.add(
            "Undecided, cam %s: %s.".formatted(CamsText.name(cam), Undecided.why(ROUNDED, cam)));
      }
    }
    return lines;
  }

  /** Span, lost motion, stops. */
  public static String travel(Result result) {
    TravelResult travel = result.travel();
    List<String> parts = new ArrayList<>();
    figure("Span", travel.span(), parts);
    figure("lost motion", travel.lostMotion(), parts);
    parts.add("closed stop " + stop(travel.closedStop()));
    parts.add("open stop " + stop(travel.openStop()));
    parts.add("x counts from the " + travel.datum().replace('-', ' '));
    String note = travel.lostMotionNote();
    return String.join("; ", parts)
        + "."
        + (note == null || note.isBlank() ? "" : " Lost motion: " + note);
  }

  private static void figure(String name, @Nullable Measured figure, List<String> parts) {
    if (figure != null) {
      parts.add(name + " " + ROUNDED.interval(figure.value(), figure.u95()) + " turns");
    }
  }

  private static String stop(@Nullable StopResult stop) {
    return stop == null
        ? "not known"
        : "by %s at reading %s".formatted(stop.source(), FigureText.value(stop.value(), stop.u()));
  }

  /** A line a motor stroke: time, speed, what stopped it, margin. */
  public static List<String> motorStrokes(Result result) {
    List<String> lines = new ArrayList<>();
    int number = 0;
    for (RecordingResult recording : result.recordings()) {
      for (StrokeResult stroke : recording.strokes()) {
        number++;
        if (stroke.motor() != null) {
          lines.add("Stroke " + number + ": " + motorStroke(stroke) + ".");
        }
      }
    }
    return lines;
  }

  private static String motorStroke(StrokeResult stroke) {
    List<String> parts = new ArrayList<>();
    parts.add(stroke.direction());
    if (stroke.strokeTimeS() != null) {
      parts.add(Figures.decimals(stroke.strokeTimeS(), 1) + " s");
    }
    MotorResult motor = stroke.motor();
    if (motor != null && motor.runTurnsPerS() != null) {
      Measured speed = motor.runTurnsPerS();
      parts.add(ROUNDED.interval(speed.value(), speed.u95()) + " turns/s");
    }
    parts.add("stopped by " + PoweredText.stopped(stroke.stoppedBy()));
    if (stroke.coast() != null) {
      parts.add("coast " + ROUNDED.interval(stroke.coast().value(), stroke.coast().u95()));
    }
    if (motor != null && motor.margin() != null) {
      parts.add("margin " + ROUNDED.interval(motor.margin().value(), motor.margin().u95()));
    }
    return String.join(", ", parts);
  }
}
