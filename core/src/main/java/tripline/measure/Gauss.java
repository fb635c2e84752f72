package tripline.measure;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal law. */
public final class Gauss {
  private static final NormalDistribution UNIT = NormalDistribution.of(0, 1);

  private Gauss() {}

  /** Probability below z, 0..1; z in standard deviations. */
  public static double cdf(double z) {
    return UNIT.cumulativeProbability(z);
  }

  /** Probability between a and b, accurate in both tails. */
  static double between(double a, double b) {
    return UNIT.probability(a, b);
  }

  static double density(double z) {
    return UNIT.density(z);
  }

  static double quantile(double p) {
    return UNIT.inverseCumulativeProbability(p);
  }
}
