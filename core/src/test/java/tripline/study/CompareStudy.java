package tripline.study;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import tripline.study.ComparedPair.Meeting;
import tripline.study.ComparedPair.Moving;

/**
 * Comparisons against the truth: {@code CompareStudy [PAIRS] [FIRST_SEED]}, so many pairs for each
 * way to measure twice and each way to move. Prints how often the 95 % intervals of the difference
 * hold the true one, how often a pair in which nothing moved shows a movement, and which movements
 * are found.
 */
public final class CompareStudy {
  private CompareStudy() {}

  public static void main(String[] args) {
    int pairs = args.length > 0 ? Integer.parseInt(args[0]) : 50;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    for (Meeting meeting : Meeting.values()) {
      for (Moving moving : Moving.values()) {
        out.printf("%-9s %-7s %s%n", meeting, moving, of(meeting, moving, seed, pairs).line());
      }
    }
  }

  static CompareScore of(Meeting meeting, Moving moving, long seed, int pairs) {
    CompareScore score = new CompareScore();
    for (long s = seed; s < seed + pairs; s++) {
      score.add(ComparedPair.of(meeting, moving, s));
    }
    return score;
  }
}
