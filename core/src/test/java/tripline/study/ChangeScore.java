package tripline.study;

import java.util.Arrays;
import java.util.List;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.sample.ContactState;
import tripline.truth.Actuator;
import tripline.truth.Floor;
import tripline.truth.Logger;
import tripline.truth.TrueChange;

/**
 * Readings at changes against the truth, pooled over recordings.
 *
 * <p><b>Relative error.</b> Within a recording and a direction, the mean error of its k changes is
 * subtracted from each: a constant offset is no error of positions relative to each other. For
 * independent errors of variance f<sub>i</sub>², the squares of what is left sum up to (1 - 1/k)
 * sum(f<sub>i</sub>²) on average, whatever the single f<sub>i</sub>: that sum is what the ratio to
 * the floor divides by, so that 1.00 is reached exactly by a reduction that attains the floor.
 *
 * <p><b>Coverage.</b> The true reading (before noise and counts) against reading ± the 95 %
 * half-width of fit (normal) and bracket (rectangular).
 */
final class ChangeScore {
  int truths;
  int found;
  int invented;
  int covered;
  private double squares;
  private double floorSquares;
  private double fitSquares;
  private double dof;
  private double worst;

  /** Takes one recording. */
  void add(Actuator actuator, Logger logger, List<Change> changes) {
    List<TrueChange> truth = actuator.changes();
    truths += truth.size();
    boolean[] used = new boolean[changes.size()];
    double[] error = new double[truth.size()];
    double[] floor = new double[truth.size()];
    double[] fit = new double[truth.size()];
    Arrays.fill(error, Double.NaN);
    for (int i = 0; i < truth.size(); i++) {
      TrueChange t = truth.get(i);
      int at = match(t, changes, used);
      if (at < 0) {
        continue;
      }
      used[at] = true;
      found++;
      Change c = changes.get(at);
      double scale = Math.abs(logger.sensor().turnsPerUnit());
      error[i] = (c.place().reading() - logger.sensor().exact(actuator.path(), t.timeS())) * scale;
      Floor best = Floor.of(t, logger);
      floor[i] = best.turns() * best.turns();
      fit[i] = best.fit() * best.fit();
      double half =
          Estimate.of(
                  0,
                  Part.own("fit", c.place().u(), c.place().law()),
                  Part.own(
                      "bracket",
                      Math.abs(c.place().speed()) * c.gapNs() * 1e-9 / Math.sqrt(12),
                      Shape.RECTANGULAR))
              .expanded95();
      covered += Math.abs(error[i]) <= half * scale ? 1 : 0;
    }
    for (boolean u : used) {
      invented += u ? 0 : 1;
    }
    pool(truth, error, floor, fit, 1);
    pool(truth, error, floor, fit, -1);
  }

  private void pool(
      List<TrueChange> truth, double[] error, double[] floor, double[] fit, int sign) {
    double sum = 0;
    int k = 0;
    for (int i = 0; i < error.length; i++) {
      if (!Double.isNaN(error[i]) && truth.get(i).speed() * sign > 0) {
        sum += error[i];
        k++;
      }
    }
    for (int i = 0; i < error.length && k > 1; i++) {
      if (!Double.isNaN(error[i]) && truth.get(i).speed() * sign > 0) {
        double e = error[i] - sum / k;
        squares += e * e;
        worst = Math.max(worst, Math.abs(e));
        floorSquares += floor[i] * (1 - 1.0 / k);
        fitSquares += fit[i] * (1 - 1.0 / k);
        dof += 1 - 1.0 / k;
      }
    }
  }

  /**
   * The found change of the same channel and state whose bracket is nearest, within 30 ms of the
   * true time.
   */
  private static int match(TrueChange t, List<Change> changes, boolean[] used) {
    long at = Math.round(t.timeS() * 1e9);
    ContactState to = t.closed() ? ContactState.CLOSED : ContactState.OPEN;
    int best = -1;
    long bestNs = 30_000_000;
    for (int i = 0; i < changes.size(); i++) {
      Change c = changes.get(i);
      long off = Math.max(0, Math.max(c.beforeNs() - at, at - c.afterNs()));
      if (!used[i] && c.channel() == t.channel() && c.to() == to && off <= bestNs) {
        best = i;
        bestNs = off;
      }
    }
    return best;
  }

  int missed() {
    return truths - found;
  }

  /** Rms relative error, turns. */
  double rms() {
    return Math.sqrt(squares / dof);
  }

  /** Largest relative error, turns. */
  double worst() {
    return worst;
  }

  /** Rms relative error over the floor. */
  double overFloor() {
    return Math.sqrt(squares / floorSquares);
  }

  /** Share of the floor's variance that is the fit's. */
  double fitShare() {
    return fitSquares / floorSquares;
  }

  /** Share of 95 % intervals that hold the truth. */
  double coverage() {
    return (double) covered / found;
  }

  /** Adds another score. */
  void merge(ChangeScore other) {
    truths += other.truths;
    found += other.found;
    invented += other.invented;
    covered += other.covered;
    squares += other.squares;
    floorSquares += other.floorSquares;
    fitSquares += other.fitSquares;
    dof += other.dof;
    worst = Math.max(worst, other.worst);
  }
}
