package tripline.harness.conform;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.link.Answer;
import tripline.link.LinkMessage;
import tripline.link.Result;

/**
 * What came of a command.
 *
 * @param answer its answer, null if none came
 * @param before what was received between command and answer
 * @param after index of what was heard right after the answer
 */
record Reply(@Nullable Answer answer, List<Heard> before, int after) {
  Reply {
    before = List.copyOf(before);
  }

  /** Whether it was answered so. */
  boolean is(Result result) {
    return answer != null && answer.result() == result;
  }

  /** The answer's value, -1 without one. */
  long value() {
    return answer == null ? -1 : answer.value();
  }

  /** The answer in a word. */
  String word() {
    return answer == null
        ? "no answer"
        : answer.result().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** Messages of a kind before the answer. */
  <M extends LinkMessage> List<M> before(Class<M> kind) {
    return before.stream().map(Heard::message).filter(kind::isInstance).map(kind::cast).toList();
  }
}
