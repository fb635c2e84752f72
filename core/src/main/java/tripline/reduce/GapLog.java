package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Stretches with rows or position readings missing, told from the rhythm of the stamps. Candidates
 * are kept as they pass (at most {@value #MOST}) and judged once the rhythm is known.
 */
final class GapLog {
  static final int MOST = 512;
  private static final double LONG = 1.9;
  private static final long LEARN = 1024;

  private final Rhythm rhythm;
  private final Loss.What what;
  private final List<Candidate> candidates = new ArrayList<>();
  private long thresholdNs = Long.MAX_VALUE;
  private long nextLearn = 32;

  /** What a logger writes. */
  enum Writes {
    EVERY_SAMPLE,
    CHANGES_ONLY
  }

  private record Candidate(long fromNs, long toNs, double before, double after) {}

  GapLog(Rhythm rhythm, Loss.What what) {
    this.rhythm = rhythm;
    this.what = what;
  }

  /** A distance between stamps, with the readings on either side (NaN where unknown). */
  void onDistance(long fromNs, long toNs, double before, double after) {
    if (rhythm.total() >= nextLearn) {
      nextLearn += LEARN;
      thresholdNs = (long) (LONG * rhythm.medianNs());
    }
    if (toNs - fromNs > thresholdNs && candidates.size() < MOST) {
      candidates.add(new Candidate(fromNs, toNs, before, after));
    }
  }

  /**
   * The gaps.
   *
   * @param writes whether the logger writes every sample or only changes: the silence of the latter
   *     is a loss only where the reading moved across it
   * @param leastMove a reading that moved further than this across a silence was not held by a
   *     logger that writes only changes: it was lost
   */
  List<Loss> losses(double leastMove, Writes writes) {
    List<Loss> losses = new ArrayList<>();
    long median = rhythm.medianNs();
    boolean regular = writes == Writes.EVERY_SAMPLE && rhythm.regular();
    for (Candidate c : candidates) {
      double moved = c.after - c.before;
      long distance = c.toNs - c.fromNs;
      boolean lost =
          regular
              ? distance > LONG * median
              : distance > 5 * rhythm.quantileNs(0.05)
                  && distance > 3 * median
                  && Math.abs(moved) > leastMove;
      if (lost) {
        long samples = regular ? Math.round((double) distance / median) - 1 : -1;
        losses.add(new Loss(c.fromNs, c.toNs, samples, what, moved));
      }
    }
    return losses;
  }
}
