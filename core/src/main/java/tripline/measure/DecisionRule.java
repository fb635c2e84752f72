package tripline.measure;

/**
 * Guard-banded decision rule of JCGM 106:2012 clause 8.3 and ISO 14253-1: the benefit of the doubt
 * goes to nobody.
 *
 * @param k guard band in standard uncertainties, finite, at least 0 (0 is simple acceptance)
 */
public record DecisionRule(double k) {

  /** 95 % one-sided: a figure on the very limit is accepted, or rejected, once in twenty. */
  public static final DecisionRule STANDARD = new DecisionRule(1.645);

  /**
   * @throws IllegalArgumentException if k is negative or not finite
   */
  public DecisionRule {
    Finite.requireNotNegative(k, "guard band factor");
  }

  /** Width of the guard band for a standard uncertainty. */
  public double guardBand(double u) {
    return k * Finite.requireNotNegative(u, "standard uncertainty");
  }

  /** As {@link #decide(double, double, Limits)} with the figure's combined uncertainty. */
  public Decision decide(Estimate figure, Limits limits) {
    return decide(figure.value(), figure.u(), limits);
  }

  /**
   * With guard band g = k u: accept from L + g to U - g (both included; empty where the guard bands
   * meet), reject below L - g and above U + g (not included), else undecided.
   *
   * @param y measured value, finite
   * @param u its standard uncertainty, at least 0
   */
  public Decision decide(double y, double u, Limits limits) {
    Finite.require(y, "value");
    double g = guardBand(u);
    if (y >= limits.lower() + g && y <= limits.upper() - g) {
      return Decision.ACCEPT;
    }
    return y < limits.lower() - g || y > limits.upper() + g ? Decision.REJECT : Decision.UNDECIDED;
  }
}
