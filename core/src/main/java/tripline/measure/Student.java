package tripline.measure;

import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t law; degrees of freedom are above 0 and may be infinite (then it is the normal). */
public final class Student {
  private Student() {}

  /**
   * Coverage factor t_p(nu) of JCGM 100 Table G.2: the two-sided interval holds p.
   *
   * @throws IllegalArgumentException if p is not between 0 and 1 or nu not above 0
   */
  public static double coverageFactor(double p, double nu) {
    Finite.requireProbability(p, "probability");
    return -quantile(0.5 * (1 - p), nu);
  }

  /** The value with probability p below it. */
  public static double quantile(double p, double nu) {
    Finite.requireProbability(p, "probability");
    return law(nu).inverseCumulativeProbability(p);
  }

  /** Probability of a t at least this large in size by chance, 0 to 1 (two-sided test). */
  public static double twoSidedProbability(double t, double nu) {
    if (Double.isNaN(t)) {
      throw new IllegalArgumentException("t is not a number");
    }
    return Math.min(1, 2 * law(nu).survivalProbability(Math.abs(t)));
  }

  private static TDistribution law(double nu) {
    if (!(nu > 0)) {
      throw new IllegalArgumentException("degrees of freedom: " + nu);
    }
    return TDistribution.of(nu);
  }
}
