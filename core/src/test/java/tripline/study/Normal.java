package tripline.study;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal law, from a library the product's own is not made of alone. */
final class Normal {
  private static final NormalDistribution UNIT = NormalDistribution.of(0, 1);

  private Normal() {}

  static double below(double z) {
    return UNIT.cumulativeProbability(z);
  }

  static double quantile(double p) {
    return UNIT.inverseCumulativeProbability(p);
  }
}
