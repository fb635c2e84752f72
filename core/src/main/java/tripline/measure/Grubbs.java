package tripline.measure;

/**
 * Grubbs' test for one outlier (ISO 5725-2 7.3.4; e-Handbook 1.3.5.17): the value farthest from the
 * mean, in standard deviations. An outlier is reported, never dropped.
 *
 * @param n values, at least 3
 * @param index of the farthest value, from 0
 * @param g its distance from the mean over the standard deviation; 0 if there is no scatter
 */
public record Grubbs(int n, int index, double g) {

  /**
   * Finds the farthest value, judged by the values' own scatter.
   *
   * @throws IllegalArgumentException for fewer than three values
   */
  public static Grubbs of(double... values) {
    return of(values, 0);
  }

  /**
   * Finds the farthest value.
   *
   * @param leastSd what the measurement alone must scatter, at least 0: of values that agree by
   *     luck or by a coarse encoder, none is an outlier for a distance that nobody can measure
   * @throws IllegalArgumentException for fewer than three values
   */
  public static Grubbs of(double[] values, double leastSd) {
    Finite.requireAtLeast(3, values.length, "values of an outlier test");
    Finite.requireNotNegative(leastSd, "least standard deviation");
    Moments moments = Moments.of(values);
    int index = 0;
    for (int i = 1; i < values.length; i++) {
      if (Math.abs(values[i] - moments.mean()) > Math.abs(values[index] - moments.mean())) {
        index = i;
      }
    }
    double distance = Math.abs(values[index] - moments.mean());
    double sd = Math.max(moments.sd(), leastSd);
    return new Grubbs(values.length, index, distance == 0 ? 0 : distance / sd);
  }

  /** True if so far a value would come by chance with probability below alpha, either side. */
  public boolean outlier(double alpha) {
    return g > critical(n, alpha, Sides.TWO);
  }

  /**
   * Critical value of g. Never above {@code (n-1)/sqrt n}, which no g exceeds: with three values
   * the test can hardly ever speak.
   *
   * @param n values, at least 3
   * @param alpha probability of a false alarm, between 0 and 1
   */
  public static double critical(int n, double alpha, Sides sides) {
    Finite.requireAtLeast(3, n, "values of an outlier test");
    Finite.requireProbability(alpha, "alpha");
    double tail = alpha / (sides == Sides.TWO ? 2.0 * n : n);
    double t = Student.quantile(tail, n - 2);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }
}
