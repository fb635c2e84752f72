package tripline.harness.watch;

import java.util.ArrayList;
import java.util.List;
import tripline.job.End;
import tripline.live.Step;
import tripline.result.Result;

/** What a step says that concerns a stop, or the valve as a whole. */
record WholeWords(Step step, Result result, Speech speech) {
  private static final String BEFORE =
      "Isolate, lock out and prove dead before the cover comes off; change over to the handwheel.";
  private static final String AFTER =
      "Cover and flameproof joints back as they were; clear of handwheel and stem when power"
          + " returns. The plant's procedures and local codes govern.";
  private static final int MOST_FAULTS = 2;

  Words say() {
    return switch (step.phase()) {
      case NO_POSITION ->
          Words.of(
              "NO POSITION",
              "The logger sends no position reading.",
              "Contacts are shown as they come; nothing can be set by them alone.");
      case CONFIRM_STOP -> confirmStop(step.end().orElseThrow());
      case STROKE -> stroke();
      case ACCEPTED ->
          Words.of(
              "ACCEPTED", "Everything is set as the sheet has it: q prints the answer.", AFTER);
      case REJECTED -> rejected();
      default -> findStop();
    };
  }

  private Words findStop() {
    String how = "to the stop and touch it; do not force it.";
    return step.end()
        .map(
            end ->
                Words.of(
                    Speech.end(end) + ": FIND THE STOP",
                    "Run by hand " + Speech.toward(end) + " " + how,
                    "Standing on it, press " + key(end) + ".",
                    step.ahead()
                        .map(
                            a -> "By the sheet some " + speech.both(a.handwheelTurns()) + " to go.")
                        .orElse("")))
        .orElse(
            Words.of(
                "FIND A STOP",
                "Run by hand " + how,
                "Either end first. Standing on it, press c (closed stop) or o (open stop).",
                BEFORE));
  }

  private static Words confirmStop(End end) {
    return Words.of(
        Speech.end(end) + ": IS THIS THE STOP?",
        "If the valve stands on its " + end.word() + " stop, press " + key(end) + ".",
        "If it does not, go on " + Speech.toward(end) + ".");
  }

  private static String key(End end) {
    return end == End.CLOSED ? "c" : "o";
  }

  private Words stroke() {
    return Words.of(
        "BOTH ENDS ARE RIGHT",
        "Stroke from stop to stop and back, so that all is seen both ways.",
        step.unseen().isEmpty()
            ? ""
            : "Not decided yet: " + speech.safe(String.join(", ", step.unseen())) + ".");
  }

  private Words rejected() {
    List<String> why = new ArrayList<>();
    result.findings().stream()
        .filter(f -> f.severity().equals("fault"))
        .limit(MOST_FAULTS)
        .forEach(f -> why.add(speech.safe(f.message())));
    why.add("q prints the answer, with what to do about it.");
    return new Words("REJECTED", "The ends are right, something else is not.", why);
  }
}
