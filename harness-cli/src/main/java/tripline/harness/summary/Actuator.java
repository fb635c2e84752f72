package tripline.harness.summary;

import java.time.Instant;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tripline.job.End;

/** An actuator and its results. */
final class Actuator {
  private static final int MOST_HISTORY = 8;

  private final String tag;
  private final List<ResultLine> results;

  /** Of each end, the results that are the first of a new setting. */
  private final Map<End, NavigableSet<Integer>> setAnew = new EnumMap<>(End.class);

  /**
   * An actuator.
   *
   * @param tag plant tag
   * @param results in any order, at least one
   */
  Actuator(String tag, List<ResultLine> results) {
    this.tag = tag;
    this.results =
        results.stream()
            .sorted(
                Comparator.comparing(ResultLine::when)
                    .thenComparing(ResultLine::written)
                    .thenComparing(ResultLine::file))
            .toList();
    for (End end : End.values()) {
      setAnew.put(end, settings(end));
    }
  }

  private NavigableSet<Integer> settings(End end) {
    NavigableSet<Integer> starts = new TreeSet<>();
    EndLine known = EndLine.NONE;
    for (int i = 0; i < results.size(); i++) {
      EndLine now = results.get(i).end(end);
      if (results.get(i).adjusted() || now.setAnewSince(known)) {
        starts.add(i);
      }
      known = now.backoff() == null ? known : now;
    }
    return starts;
  }

  String tag() {
    return tag;
  }

  /** In order of time. */
  List<ResultLine> results() {
    return results;
  }

  /** The one that counts. */
  ResultLine latest() {
    return results.get(results.size() - 1);
  }

  /** The lesser of the latest margins. */
  @Nullable Figure margin() {
    End end = latest().leastMargin();
    return end == null ? null : latest().end(end).margin();
  }

  /** Change of a backoff since its end was last set; null with fewer than two results of it. */
  @Nullable Figure backoffChange(End end) {
    return change(end, EndLine::backoff);
  }

  /** Change of the lesser margin, at its end, since that was last set; null as above. */
  @Nullable Figure marginChange() {
    End end = latest().leastMargin();
    return end == null ? null : change(end, EndLine::margin);
  }

  private @Nullable Figure change(End end, Function<EndLine, @Nullable Figure> which) {
    Figure first = null;
    Figure last = null;
    int count = 0;
    for (ResultLine result : results.subList(start(end), results.size())) {
      Figure figure = which.apply(result.end(end));
      if (figure != null) {
        first = first == null ? figure : first;
        last = figure;
        count++;
      }
    }
    return first == null || last == null || count < 2 ? null : first.to(last);
  }

  private int start(End end) {
    NavigableSet<Integer> starts = setAnew.getOrDefault(end, new TreeSet<>());
    return starts.isEmpty() ? 0 : starts.last();
  }

  /** When the first result of an end's present setting began. */
  Instant setSince(End end) {
    return results.get(start(end)).when();
  }

  /** How often a new setting of either end was seen. */
  int adjustments() {
    return starts().size();
  }

  private NavigableSet<Integer> starts() {
    NavigableSet<Integer> starts = new TreeSet<>();
    setAnew.values().forEach(starts::addAll);
    return starts;
  }

  /**
   * Its decisions, oldest first: {@code a}ccept, {@code R}eject, {@code ?}, and {@code |} before a
   * result that is the first of a new setting; the last eight signs.
   */
  String history() {
    NavigableSet<Integer> starts = starts();
    StringBuilder signs = new StringBuilder();
    for (int i = 0; i < results.size(); i++) {
      signs.append(starts.contains(i) ? "|" : "");
      signs.append(
          switch (results.get(i).decision()) {
            case ACCEPT -> 'a';
            case REJECT -> 'R';
            case UNDECIDED -> '?';
          });
    }
    return signs.substring(Math.max(0, signs.length() - MOST_HISTORY));
  }
}
