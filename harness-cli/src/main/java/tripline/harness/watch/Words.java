package tripline.harness.watch;

import java.util.List;
import java.util.Optional;
import tripline.harness.report.Glyphs;
import tripline.live.Step;
import tripline.live.Whereabouts;
import tripline.result.Result;

/**
 * A step of the guide in plain language.
 *
 * @param title what it concerns, and which step
 * @param act what to do now, one sentence
 * @param why further sentences, the most important first
 */
record Words(String title, String act, List<String> why) {

  Words {
    why = why.stream().filter(w -> !w.isEmpty()).toList();
  }

  static Words of(String title, String act, String... why) {
    return new Words(title, act, List.of(why));
  }

  /** What a step says. */
  static Words of(Step step, Optional<Whereabouts> where, Result result, Glyphs glyphs) {
    Speech speech = new Speech(glyphs);
    return step.task().isPresent()
        ? new TaskWords(step, step.task().get(), where, speech).say()
        : new WholeWords(step, result, speech).say();
  }
}
