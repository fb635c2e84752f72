package tripline.harness.rehearse;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.harness.rehearse.script.Action;
import tripline.harness.rehearse.script.Grammar;
import tripline.harness.rehearse.valve.Truth;
import tripline.harness.rehearse.valve.VirtualValve;
import tripline.harness.report.SafeText;

/** What a rehearsal says: answers on one stream, what goes on on the other. */
final class Voice {
  private final PrintWriter answers;
  private final PrintWriter notes;

  Voice(PrintWriter answers, PrintWriter notes) {
    this.answers = answers;
    this.notes = notes;
  }

  /** Lines that were asked for. */
  void answer(List<String> lines) {
    lines.forEach(line -> answers.println(SafeText.line(line)));
    answers.flush();
  }

  /** A line of what goes on, after the rig's time. */
  void note(Rig rig, String line) {
    notes.println(
        String.format(Locale.ROOT, "%8.2f s  %s", rig.nowNs() / 1e9, SafeText.line(line)));
  }

  /** Somebody wants to know. */
  void say(Rig rig, Action what) {
    if (what instanceof Action.SayTruth) {
      answer(Truth.of(rig.valve()));
    } else if (what instanceof Action.SayHelp) {
      answer(Grammar.TEXT.lines().toList());
    } else {
      answer(List.of(where(rig)));
    }
  }

  /** Where the valve stands, and which contacts are closed there. */
  static String where(Rig rig) {
    VirtualValve valve = rig.valve();
    List<String> closed = new ArrayList<>();
    long mask = valve.closedAt(valve.nowNs());
    for (int i = 0; i < rig.channels().size(); i++) {
      if ((mask >> i & 1) == 1) {
        closed.add(rig.channels().get(i));
      }
    }
    return String.format(
        Locale.ROOT,
        "at %.4f turns, %.1f %% open; handwheel %.4f; closed: %s",
        valve.driveTurns(),
        100 * valve.driveTurns() / valve.build().spanTurns(),
        valve.handwheelTurns(),
        closed.isEmpty() ? "none" : String.join(" ", closed));
  }
}
