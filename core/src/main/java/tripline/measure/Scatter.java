package tripline.measure;

/** What {@link Drift} and {@link Step} share: residuals about a model, and a t-test on them. */
final class Scatter {
  private Scatter() {}

  static Repeatability about(double squares, int dof, Repeatability known, double leastSd) {
    Finite.requireNotNegative(leastSd, "least standard deviation");
    Repeatability own =
        dof > 0 ? new Repeatability(Math.sqrt(squares / dof), dof) : Repeatability.UNKNOWN;
    return own.pool(known).atLeast(leastSd);
  }

  static double squares(Moments series) {
    return series.n() > 1 ? series.sd() * series.sd() * (series.n() - 1) : 0;
  }

  static double chance(double effect, double u, double dof) {
    return effect == 0 ? 1 : Student.twoSidedProbability(effect / u, dof);
  }
}
