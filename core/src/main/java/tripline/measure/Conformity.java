package tripline.measure;

/** How likely a figure conforms, and whether it may be said to (JCGM 106:2012 clauses 7 and 8). */
public final class Conformity {
  private Conformity() {}

  /** Decision by {@link DecisionRule#STANDARD}. */
  public static Decision decide(Estimate figure, Limits limits) {
    return DecisionRule.STANDARD.decide(figure, limits);
  }

  /**
   * Decision with guard band {@code k u}; see {@link DecisionRule#decide(double,double,Limits)}.
   */
  public static Decision decide(Estimate figure, Limits limits, double k) {
    return new DecisionRule(k).decide(figure, limits);
  }

  /** Decision on a value and its standard uncertainty with guard band {@code k u}. */
  public static Decision decide(double y, double u, Limits limits, double k) {
    return new DecisionRule(k).decide(y, u, limits);
  }

  /** Probability of conformity of a figure; see {@link #probability(double, double, Limits)}. */
  public static double probability(Estimate figure, Limits limits) {
    return probability(figure.value(), figure.u(), limits);
  }

  /**
   * Probability that the true value is within the limits, {@code Phi((U-y)/u) - Phi((L-y)/u)}, 0 to
   * 1 (JCGM 106 clause 7, normal law, no prior knowledge). With u = 0 it is 1 inside or on a limit,
   * else 0.
   *
   * @param y measured value, finite
   * @param u its standard uncertainty, at least 0
   */
  public static double probability(double y, double u, Limits limits) {
    Finite.require(y, "value");
    Finite.requireNotNegative(u, "standard uncertainty");
    if (u == 0 || limits.lower() == limits.upper()) {
      return u == 0 && limits.contain(y) ? 1 : 0;
    }
    return Gauss.between((limits.lower() - y) / u, (limits.upper() - y) / u);
  }
}
