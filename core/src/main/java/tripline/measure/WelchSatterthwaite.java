package tripline.measure;

/** Effective degrees of freedom of a combined uncertainty (JCGM 100:2008 G.4.1). */
public final class WelchSatterthwaite {
  private WelchSatterthwaite() {}

  /**
   * {@code u^4 / sum(u_i^4 / nu_i)} from unrounded parts; infinite if every part's are.
   *
   * @param u standard uncertainties of the parts, at least 0
   * @param nu degrees of freedom of each, above 0, may be infinite
   */
  public static double degreesOfFreedom(double[] u, double[] nu) {
    if (u.length != nu.length) {
      throw new IllegalArgumentException(u.length + " parts, " + nu.length + " degrees of freedom");
    }
    double variance = 0;
    double sum = 0;
    for (int i = 0; i < u.length; i++) {
      double square = Finite.requireNotNegative(u[i], "standard uncertainty") * u[i];
      if (!(nu[i] > 0)) {
        throw new IllegalArgumentException("degrees of freedom: " + nu[i]);
      }
      variance += square;
      sum += square * square / nu[i];
    }
    return sum > 0 ? variance * variance / sum : Double.POSITIVE_INFINITY;
  }

  /**
   * The next lower integer, as G.4.1 has it, or infinity. Rounding a part before the formula can
   * move the result by one; feed it unrounded figures.
   */
  public static double truncated(double degreesOfFreedom) {
    return Math.max(1, Math.floor(degreesOfFreedom));
  }
}
