package tripline.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import tripline.measure.Gauss;

/**
 * Where within a count the rests of a coarse encoder lie. A reading of noise s about x, rounded to
 * counts, shows each count with the probability that x + s z falls into it. So a rest that flickers
 * between two counts tells how many s it stands from the edge between them, and all rests of a
 * recording together tell s. Both are searched on a grid, positions evenly and the noise by its
 * logarithm (Bayes' rule with these as priors); the answer is the mean over the grid and its
 * spread.
 *
 * <p>Where no rest flickers a rest is anywhere in its count, and nothing is said.
 */
final class CountDither {
  /** Noise, in counts, by equal steps of its logarithm. */
  private static final int NOISES = 15;

  private static final double LEAST_NOISE = 0.02;
  private static final double MOST_NOISE = 0.5;

  /** Positions tried, so many a count, up to a count from the middle of the one most shown. */
  private static final int STEPS = 40;

  private static final int PLACES = 2 * STEPS;

  /** Steps from where on everything lies below an edge, or nothing. */
  private static final int FAR = 3 * STEPS;

  /** Probability at least, for noise is not quite normal. */
  private static final double STRAY = 1e-4;

  /** Readings of a rest that count as independent at most. */
  private static final double MOST_INDEPENDENT = 200;

  /** Edges of an encoder are spaced evenly to about this part of a count (authors' choice). */
  private static final double EDGE_U = 0.05;

  /** A rest that is known little better than its count stays with the count's law. */
  private static final double CLEARLY_LESS = 0.85;

  private CountDither() {}

  /**
   * The movements, with each rest where it lies within its count as far as that can be told.
   *
   * @param shown what each rest among them showed, in order; more of them do not matter
   * @param quantum one count, reading units; 0 where none has shown yet
   */
  static List<Movement> placed(List<Movement> movements, List<CountTally> shown, double quantum) {
    @Nullable Within[] within = of(shown, quantum);
    List<Movement> placed = new ArrayList<>(movements);
    int rests = 0;
    for (int i = 0; i < placed.size(); i++) {
      if (placed.get(i) instanceof Movement.Rest rest) {
        Within better = within[rests];
        if (better != null
            && rest.grain() == Movement.Grain.COUNT
            && better.u() < CLEARLY_LESS * rest.u()) {
          placed.set(i, moved(rest, better));
        }
        rests++;
      }
    }
    return placed;
  }

  private static Movement.Rest moved(Movement.Rest rest, Within to) {
    return new Movement.Rest(
        rest.fromNs(),
        rest.toNs(),
        to.reading(),
        to.u(),
        rest.low(),
        rest.high(),
        Movement.Grain.FLICKER);
  }

  /**
   * Where a rest lies.
   *
   * @param reading best estimate, reading units
   * @param u standard uncertainty
   */
  record Within(double reading, double u) {}

  /** Where each rest lies, null where that is not known better than by its count. */
  static @Nullable Within[] of(List<CountTally> rests, double quantum) {
    @Nullable Within[] within = new Within[rests.size()];
    if (rests.stream().noneMatch(rest -> rest.tells(quantum) && rest.flickers())) {
      return within;
    }
    Posterior[][] posteriors = new Posterior[rests.size()][NOISES];
    double[] logJoint = new double[NOISES];
    double independent = independent(rests, quantum);
    for (int s = 0; s < NOISES; s++) {
      double[] below = below(LEAST_NOISE * Math.pow(MOST_NOISE / LEAST_NOISE, s / (NOISES - 1.0)));
      for (int r = 0; r < within.length; r++) {
        if (rests.get(r).tells(quantum)) {
          posteriors[r][s] = posterior(rests.get(r), independent, below);
          logJoint[s] += posteriors[r][s].logEvidence();
        }
      }
    }
    for (int r = 0; r < within.length; r++) {
      if (rests.get(r).tells(quantum)) {
        within[r] = within(rests.get(r), posteriors[r], logJoint, quantum);
      }
    }
    return within;
  }

  /**
   * A rest at one noise.
   *
   * @param logEvidence logarithm of the probability of what was shown
   * @param mean position, counts from the middle of the one most shown
   * @param square mean of its square
   */
  private record Posterior(double logEvidence, double mean, double square) {}

  private static Posterior posterior(CountTally rest, double independent, double[] below) {
    double each = Math.min(independent, MOST_INDEPENDENT / rest.total());
    double[] log = new double[PLACES];
    for (int level = 0; level < CountTally.LEVELS; level++) {
      long readings = rest.readings(level);
      for (int i = 0; i < PLACES && readings > 0; i++) {
        log[i] += each * readings * Math.log(share(below, level - rest.mostShown(), i));
      }
    }
    Posterior mean = average(log, CountDither::place, i -> place(i) * place(i));
    return new Posterior(mean.logEvidence() - Math.log(PLACES), mean.mean(), mean.square());
  }

  /** Averages over the noises, each weighed by the evidence of all rests, this one's included. */
  private static Within within(
      CountTally rest, Posterior[] posteriors, double[] logJoint, double quantum) {
    Posterior over = average(logJoint, i -> posteriors[i].mean(), i -> posteriors[i].square());
    double mean = over.mean();
    double variance = Math.max(0, over.square() - mean * mean);
    double counts = rest.mostShown() - CountTally.MIDDLE + mean;
    double u = Math.hypot(Math.sqrt(variance), EDGE_U);
    return new Within(rest.origin() + counts * quantum, u * quantum);
  }

  /**
   * Share of the readings that came about by themselves: as many fewer as flickering ones changed
   * less often than by chance.
   */
  private static double independent(List<CountTally> rests, double quantum) {
    double turns = 0;
    double byChance = 0;
    for (CountTally rest : rests) {
      if (rest.tells(quantum) && rest.flickers()) {
        turns += rest.turns();
        byChance += rest.turnsByChance();
      }
    }
    return Math.min(1, turns / byChance);
  }

  private static double place(int index) {
    return (index + 0.5) / STEPS - 1;
  }

  /** Probability that a reading at a place shows a level, both from the level most shown. */
  private static double share(double[] below, int level, int place) {
    // The upper edge lies level + 1/2 - place above the place: whole steps and a half.
    int upper = level * STEPS + STEPS / 2 + STEPS - 1 - place + FAR;
    double share = cdf(below, upper) - cdf(below, upper - STEPS);
    return Math.max(share, STRAY);
  }

  /** Probability to lie below an edge, by the steps and a half that it lies above the place. */
  private static double[] below(double noise) {
    double[] below = new double[2 * FAR];
    for (int i = 0; i < below.length; i++) {
      below[i] = Gauss.cdf((i - FAR + 0.5) / STEPS / noise);
    }
    return below;
  }

  private static double cdf(double[] below, int index) {
    return index < 0 ? 0 : index >= below.length ? 1 : below[index];
  }

  /** Averages weighed by these logarithms; the evidence is that of all together. */
  private static Posterior average(
      double[] log, IntToDoubleFunction mean, IntToDoubleFunction square) {
    double best = Double.NEGATIVE_INFINITY;
    for (double each : log) {
      best = Math.max(best, each);
    }
    double total = 0;
    double first = 0;
    double second = 0;
    for (int i = 0; i < log.length; i++) {
      double weight = Math.exp(log[i] - best);
      total += weight;
      first += weight * mean.applyAsDouble(i);
      second += weight * square.applyAsDouble(i);
    }
    return new Posterior(best + Math.log(total), first / total, second / total);
  }
}
