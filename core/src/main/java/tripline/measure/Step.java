package tripline.measure;

import java.util.Arrays;

/**
 * One sudden change of a trip point between two strokes (an adjuster turned, a cam gear that jumped
 * a tooth), and whether scatter alone explains it.
 *
 * @param after trips before the step, 1 to n - 1
 * @param size mean after minus mean before
 * @param u its standard uncertainty
 * @param dof degrees of freedom behind u
 * @param probability of so large a step at the most favourable of all n - 1 places by scatter
 *     alone, 0 to 1: a bound (Bonferroni), never too small
 * @param residualSd scatter about the two means, {@code sqrt(sum of squares / n)}: to compare with
 *     that about a {@link Drift}
 */
public record Step(
    int after, double size, double u, double dof, double probability, double residualSd) {

  /**
   * The most significant step of trips in stroke order, judged by their own scatter about the two
   * means.
   *
   * @throws IllegalArgumentException for fewer than three trips
   */
  public static Step of(double... trips) {
    return of(trips, Repeatability.UNKNOWN, 0);
  }

  /**
   * The most significant step, judged by the trips' own scatter pooled with what is known already.
   *
   * @param trips in stroke order; two are enough if {@code known} has degrees of freedom
   * @param known scatter found elsewhere under the same conditions
   * @param leastSd what the measurement alone must scatter, at least 0
   */
  public static Step of(double[] trips, Repeatability known, double leastSd) {
    int n = Finite.requireAtLeast(known.dof() > 0 ? 2 : 3, trips.length, "trips of a step");
    Step best = at(1, trips, known, leastSd);
    for (int after = 2; after < n; after++) {
      Step step = at(after, trips, known, leastSd);
      if (step.distance() > best.distance()) {
        best = step;
      }
    }
    return best;
  }

  private static Step at(int after, double[] trips, Repeatability known, double leastSd) {
    int n = trips.length;
    Moments before = Moments.of(Arrays.copyOfRange(trips, 0, after));
    Moments behind = Moments.of(Arrays.copyOfRange(trips, after, n));
    double squares = Scatter.squares(before) + Scatter.squares(behind);
    Repeatability scatter = Scatter.about(squares, n - 2, known, leastSd);
    double size = behind.mean() - before.mean();
    double u = scatter.sd() * Math.sqrt(1.0 / after + 1.0 / (n - after));
    double chance = Math.min(1, (n - 1) * Scatter.chance(size, u, scatter.dof()));
    return new Step(after, size, u, scatter.dof(), chance, Math.sqrt(squares / n));
  }

  private double distance() {
    return size == 0 ? 0 : Math.abs(size) / u;
  }
}
