package tripline.harness.summary;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * An actuator and its results.
 *
 * @param tag plant tag
 * @param results in order of time, at least one
 */
record Actuator(String tag, List<ResultLine> results) {
  private static final int MOST_HISTORY = 8;

  Actuator {
    results =
        results.stream()
            .sorted(Comparator.comparing(ResultLine::when).thenComparing(ResultLine::file))
            .toList();
  }

  /** The one that counts. */
  ResultLine latest() {
    return results.get(results.size() - 1);
  }

  /** Change of a figure from the first result that has it to the last; null with fewer than two. */
  @Nullable Figure change(Function<ResultLine, @Nullable Figure> which) {
    Figure first = null;
    Figure last = null;
    int count = 0;
    for (ResultLine result : results) {
      Figure figure = which.apply(result);
      if (figure != null) {
        first = first == null ? figure : first;
        last = figure;
        count++;
      }
    }
    return first == null || last == null || count < 2 ? null : first.to(last);
  }

  /** Its decisions, oldest first: {@code a}ccept, {@code R}eject, {@code ?}; the last eight. */
  String history() {
    StringBuilder letters = new StringBuilder();
    for (ResultLine result :
        results.subList(Math.max(0, results.size() - MOST_HISTORY), results.size())) {
      letters.append(
          switch (result.decision()) {
            case ACCEPT -> 'a';
            case REJECT -> 'R';
            case UNDECIDED -> '?';
          });
    }
    return letters.toString();
  }
}
