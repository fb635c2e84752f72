package tripline.study;

import java.util.Locale;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.result.Result.Backoff;
import tripline.result.Result.EndsResult;

/**
 * Backoffs against the truth: whether the 95 % interval holds it, and what was said of settings
 * placed exactly on a limit of their tolerance.
 */
final class BackoffScore {
  int count;
  int without;
  int covered;
  int accepted;
  private double squares;

  void add(Run run, EndsResult ends) {
    add(run.backoff(End.CLOSED), ends.closed().backoff());
    add(run.backoff(End.OPEN), ends.open().backoff());
  }

  private void add(double truth, Backoff backoff) {
    count++;
    accepted += backoff.decision() == Decision.ACCEPT ? 1 : 0;
    Double value = backoff.value();
    Double u95 = backoff.u95();
    if (value == null || u95 == null) {
      without++;
      return;
    }
    squares += (value - truth) * (value - truth);
    covered += Math.abs(value - truth) <= u95 ? 1 : 0;
  }

  /** Share of intervals that hold the truth. */
  double coverage() {
    return (double) covered / (count - without);
  }

  /** Share of settings exactly on a limit that were accepted. */
  double acceptedShare() {
    return (double) accepted / count;
  }

  /** At most 5 %, widened by three standard deviations of what so many can tell. */
  boolean cautious() {
    return acceptedShare() <= 0.05 + 3 * Math.sqrt(0.05 * 0.95 / count);
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "| %8d %7d %10.5f %9.1f %%%s %14.1f %%%s",
        count,
        without,
        Math.sqrt(squares / Math.max(1, count - without)),
        100 * coverage(),
        AccuracyStudy.covers(coverage(), count - without) ? " " : "!",
        100 * acceptedShare(),
        cautious() ? " " : "!");
  }

  void merge(BackoffScore other) {
    count += other.count;
    without += other.without;
    covered += other.covered;
    accepted += other.accepted;
    squares += other.squares;
  }
}
