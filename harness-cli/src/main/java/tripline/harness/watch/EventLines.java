package tripline.harness.watch;

import java.io.PrintWriter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.FigureText;
import tripline.job.End;
import tripline.live.LiveAnswer;
import tripline.live.Step;
import tripline.measure.Decision;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.StopResult;

/**
 * What happens, a line each, where there is no terminal to draw on: time in seconds of the
 * recording, what kind of thing, what.
 */
final class EventLines {
  /** A change is told once the readings about it are in, s. */
  private static final double SETTLED_S = 0.6;

  private final PrintWriter out;
  private final Speech speech;
  private final Map<String, Integer> told = new HashMap<>();
  private final Map<End, String> stops = new HashMap<>();
  private Step.@Nullable Phase phase;
  private Optional<End> phaseEnd = Optional.empty();
  private Decision decision = Decision.UNDECIDED;

  EventLines(PrintWriter out, Speech speech) {
    this.out = out;
    this.speech = speech;
  }

  /** Tells what is new; changes only once they have settled. */
  void onSeen(View.Seen seen) {
    tell(seen, SETTLED_S);
  }

  /** Tells all that is left. */
  void onEnd(View.Seen seen) {
    tell(seen, Double.NEGATIVE_INFINITY);
  }

  private void tell(View.Seen seen, double settledS) {
    LiveAnswer answer = seen.answer();
    int recording = answer.result().recordings().size() - 1;
    double nowS = answer.result().recordings().get(recording).durationS();
    stops(answer, nowS);
    changes(answer, recording, nowS - settledS);
    if (answer.result().decision() != decision) {
      decision = answer.result().decision();
      line(nowS, "so far", FigureText.word(decision));
    }
    if (seen.step().phase() != phase || !seen.step().end().equals(phaseEnd)) {
      phase = seen.step().phase();
      phaseEnd = seen.step().end();
      Words words = Words.of(seen.step(), seen.where(), answer.result(), speech.glyphs());
      line(nowS, "step", words.title() + ": " + words.act());
    }
    out.flush();
  }

  private void stops(LiveAnswer answer, double nowS) {
    stop(End.CLOSED, answer.result().travel().closedStop(), nowS);
    stop(End.OPEN, answer.result().travel().openStop(), nowS);
  }

  private void stop(End end, @Nullable StopResult stop, double nowS) {
    String source = stop == null ? "" : stop.source();
    if (!source.equals(stops.getOrDefault(end, ""))) {
      stops.put(end, source);
      line(
          nowS,
          "stop",
          end.word() + " stop " + (source.isEmpty() ? "not known any more" : "by " + source));
    }
  }

  private void changes(LiveAnswer answer, int last, double untilS) {
    Changes words = new Changes(answer.result(), speech);
    Map<String, Integer> seen = new HashMap<>();
    List<ChangeResult> changes = answer.result().changes();
    for (ChangeResult change : changes) {
      String which = change.recording() + " " + change.contact();
      int number = seen.merge(which, 1, Integer::sum);
      boolean settled = change.recording() < last || change.timeS() <= untilS;
      if (settled && number > told.getOrDefault(which, 0)) {
        told.put(which, number);
        line(change.timeS(), "change", words.what(change));
      }
    }
  }

  private void line(double timeS, String kind, String what) {
    out.println(String.format(Locale.ROOT, "%9.3f s  %-6s  %s", timeS, kind, what));
  }
}
