package tripline.measure;

/**
 * Straight drift of a trip point over stroke number, with its t-test: is there one, beyond scatter?
 *
 * @param perStroke slope, in the unit of the trips for each stroke
 * @param u its standard uncertainty
 * @param dof degrees of freedom behind u
 * @param probability of so steep a slope by scatter alone, 0 to 1
 * @param residualSd scatter about the line, {@code sqrt(sum of squares / n)}: to compare with that
 *     about a {@link Step}
 */
public record Drift(double perStroke, double u, double dof, double probability, double residualSd) {

  /**
   * Drift of trips in stroke order, judged by their own scatter about the line. With three trips
   * (one degree of freedom) only a slope 12.7 times its uncertainty is significant at 5 %.
   *
   * @throws IllegalArgumentException for fewer than three trips
   */
  public static Drift of(double... trips) {
    return of(trips, Repeatability.UNKNOWN, 0);
  }

  /**
   * Drift of trips, judged by their own scatter pooled with what is known already, such as the
   * scatter of the other cams of the same actuator.
   *
   * @param trips in stroke order; two are enough if {@code known} has degrees of freedom
   * @param known scatter found elsewhere under the same conditions
   * @param leastSd what the measurement alone must scatter, at least 0: guards against trips that
   *     agree with a line by luck or by a coarse encoder
   */
  public static Drift of(double[] trips, Repeatability known, double leastSd) {
    int n = Finite.requireAtLeast(known.dof() > 0 ? 2 : 3, trips.length, "trips of a drift");
    double[] stroke = new double[n];
    double[] one = new double[n];
    for (int i = 0; i < n; i++) {
      stroke[i] = i;
      one[i] = 1;
    }
    LineFit line = LineFit.weighted(stroke, trips, one);
    Repeatability scatter = Scatter.about(line.chiSquared(), n - 2, known, leastSd);
    double u = scatter.sd() * line.uSlope();
    return new Drift(
        line.slope(),
        u,
        scatter.dof(),
        Scatter.chance(line.slope(), u, scatter.dof()),
        Math.sqrt(line.chiSquared() / n));
  }
}
