package tripline.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Stretches with rows or position readings missing, told from the rhythm of the stamps. A logger
 * that writes every sample at even distances has lost some wherever a distance is too long; one
 * that writes only what changed is silent while nothing does, and has lost some only where the
 * reading moved far meanwhile.
 *
 * <p>Candidates are kept as they pass and judged once the rhythm is known; where there are more
 * than {@value #MOST}, those that no longer look like losses go first, and what is lost beyond is
 * told as one stretch.
 */
final class GapLog {
  static final int MOST = 512;

  /** Distance, in usual ones, that shows a sample missing from a regular logger. */
  private static final double LONG = 1.9;

  private static final long LEARN = 1024;

  /** A logger that writes changes: distance in shortest usual ones, and in usual ones. */
  private static final double SILENT_SCANS = 5;

  private static final double SILENT_MEDIANS = 3;

  private final Rhythm rhythm;
  private final Loss.What what;
  private final NoiseGauge noise;
  private final BooleanSupplier writesAll;
  private final List<Candidate> candidates = new ArrayList<>();
  private long thresholdNs = Long.MAX_VALUE;
  private long nextLearn = 32;
  private long beyond;
  private long beyondNs;
  private long beyondFromNs;
  private long beyondToNs;

  private record Candidate(long fromNs, long toNs, double before, double after) {
    long distanceNs() {
      return toNs - fromNs;
    }
  }

  /**
   * @param writesAll whether the logger is known, so far, to write what has not changed
   */
  GapLog(Rhythm rhythm, Loss.What what, NoiseGauge noise, BooleanSupplier writesAll) {
    this.rhythm = rhythm;
    this.what = what;
    this.noise = noise;
    this.writesAll = writesAll;
  }

  /** A distance between stamps, with the readings on either side (NaN where unknown). */
  void onDistance(long fromNs, long toNs, double before, double after) {
    if (toNs - fromNs > thresholdNs) {
      onLong(new Candidate(fromNs, toNs, before, after));
    }
  }

  /** Longest distance that is passed over, ns; as learned so far. */
  long longestUsualNs() {
    return thresholdNs;
  }

  /** Learns from the rhythm so far what is long; cheap enough for some ten times a second. */
  void learn() {
    long total = rhythm.total();
    if (total >= nextLearn) {
      nextLearn = total + Math.min(LEARN, total);
      thresholdNs = (long) (LONG * rhythm.medianNs());
    }
  }

  private void onLong(Candidate candidate) {
    if (candidates.size() == MOST && beyond == 0) {
      Judge judge = new Judge();
      candidates.removeIf(c -> !judge.lost(c));
    }
    if (candidates.size() < MOST) {
      candidates.add(candidate);
    } else if (new Judge().lost(candidate)) {
      beyondFromNs = beyond == 0 ? candidate.fromNs : beyondFromNs;
      beyondToNs = candidate.toNs;
      beyondNs += candidate.distanceNs();
      beyond++;
    }
  }

  /** The rhythm as it is known now. */
  private final class Judge {
    private final boolean regular = rhythm.regular();
    private final boolean silenceIsLoss = regular && writesAll.getAsBoolean();
    private final long median = rhythm.medianNs();
    private final double least =
        regular ? LONG * median : Math.max(SILENT_SCANS * rhythm.scanNs(), SILENT_MEDIANS * median);

    /** A reading that moved further than this across a silence was not held. */
    private final double leastMove = 3.5 * noise.quantum() + 6 * noise.noise();

    boolean lost(Candidate c) {
      return c.distanceNs() > least && (silenceIsLoss || Math.abs(c.after - c.before) > leastMove);
    }

    long samples(long distanceNs, long stretches) {
      return regular ? Math.round((double) distanceNs / median) - stretches : -1;
    }
  }

  /** The losses so far. */
  List<Loss> losses() {
    Judge judge = new Judge();
    List<Loss> losses = new ArrayList<>();
    for (Candidate c : candidates) {
      if (judge.lost(c)) {
        long samples = judge.samples(c.distanceNs(), 1);
        losses.add(new Loss(c.fromNs, c.toNs, samples, what, c.after - c.before));
      }
    }
    if (beyond > 0) {
      long samples = judge.samples(beyondNs, beyond);
      losses.add(new Loss(beyondFromNs, beyondToNs, samples, what, Double.NaN));
    }
    return losses;
  }

  /** Knows what another one knows. */
  void become(GapLog other) {
    candidates.clear();
    candidates.addAll(other.candidates);
    thresholdNs = other.thresholdNs;
    nextLearn = other.nextLearn;
    beyond = other.beyond;
    beyondNs = other.beyondNs;
    beyondFromNs = other.beyondFromNs;
    beyondToNs = other.beyondToNs;
  }
}
