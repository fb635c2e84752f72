package tripline.measure;

import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Cochran's test for one series that scatters more than its fellows (ISO 5725-2 7.3.3), before
 * their scatter is pooled.
 */
public final class Cochran {
  private Cochran() {}

  /** Largest variance over the sum of all; 0 if nothing scatters. */
  public static double statistic(double... sds) {
    double largest = 0;
    double sum = 0;
    for (double sd : sds) {
      double variance = Finite.requireNotNegative(sd, "standard deviation") * sd;
      largest = Math.max(largest, variance);
      sum += variance;
    }
    return sum == 0 ? 0 : largest / sum;
  }

  /**
   * Critical value of the statistic.
   *
   * @param series at least 2
   * @param repeats values in each series, at least 2
   * @param alpha probability of a false alarm, between 0 and 1
   */
  public static double critical(int series, int repeats, double alpha) {
    Finite.requireAtLeast(2, series, "series");
    Finite.requireAtLeast(2, repeats, "repeats");
    Finite.requireProbability(alpha, "alpha");
    double f =
        FDistribution.of(repeats - 1.0, (series - 1.0) * (repeats - 1.0))
            .inverseSurvivalProbability(alpha / series);
    return f / (f + series - 1);
  }
}
