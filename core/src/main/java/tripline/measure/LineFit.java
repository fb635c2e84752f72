package tripline.measure;

import java.util.Arrays;

/**
 * Straight line {@code y = a + b t} by least squares with the uncertainty of everything read from
 * it (JCGM 100:2008 H.3). Kept about the weighted centre of t, so that far-away abscissae cost no
 * digits.
 *
 * @param n points, at least 2
 * @param tMean weighted mean of t
 * @param yMean weighted mean of y: the line at tMean
 * @param slope b
 * @param uCentre standard uncertainty of yMean
 * @param uSlope standard uncertainty of the slope; independent of yMean's error
 * @param chiSquared sum of squared residuals, each over its u (weighted) or plain (unweighted)
 * @param scatter standard deviation of one residual, {@code sqrt(chiSquared / (n-2))}; for weighted
 *     points it is near 1 if the line and their uncertainties hold. NaN for n = 2
 */
public record LineFit(
    int n,
    double tMean,
    double yMean,
    double slope,
    double uCentre,
    double uSlope,
    double chiSquared,
    double scatter) {

  /**
   * Points of equal, unknown uncertainty, which the residuals tell.
   *
   * @throws IllegalArgumentException for fewer than three points, unequal lengths, figures that are
   *     not finite, or one single abscissa
   */
  public static LineFit of(double[] t, double[] y) {
    Finite.requireAtLeast(3, t.length, "points of a line whose scatter is not known");
    double[] one = new double[t.length];
    Arrays.fill(one, 1);
    LineFit unit = fit(t, y, one);
    double s = unit.scatter;
    return new LineFit(
        unit.n,
        unit.tMean,
        unit.yMean,
        unit.slope,
        unit.uCentre * s,
        unit.uSlope * s,
        unit.chiSquared,
        s);
  }

  /**
   * Points of known standard uncertainty, above 0 each: the uncertainties of the line follow from
   * them alone and not from how well the points happen to agree.
   */
  public static LineFit weighted(double[] t, double[] y, double[] u) {
    double[] weights = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      if (!(Finite.require(u[i], "standard uncertainty") > 0)) {
        throw new IllegalArgumentException("standard uncertainty of a point is not above 0");
      }
      weights[i] = 1 / (u[i] * u[i]);
    }
    return fit(t, y, weights);
  }

  private static LineFit fit(double[] t, double[] y, double[] w) {
    int n = Finite.requireAtLeast(2, t.length, "points of a line");
    if (y.length != n || w.length != n) {
      throw new IllegalArgumentException("lengths " + n + ", " + y.length + ", " + w.length);
    }
    double weight = Sum.of(w);
    double tMean = weightedMean(t, w, weight);
    double yMean = weightedMean(y, w, weight);
    Sum stt = new Sum();
    Sum sty = new Sum();
    for (int i = 0; i < n; i++) {
      double dt = t[i] - tMean;
      stt.add(w[i] * dt * dt);
      sty.add(w[i] * dt * (y[i] - yMean));
    }
    if (!(stt.value() > 0)) {
      throw new IllegalArgumentException("all points of the line are at " + tMean);
    }
    double slope = sty.value() / stt.value();
    Sum squares = new Sum();
    for (int i = 0; i < n; i++) {
      double residual = y[i] - yMean - slope * (t[i] - tMean);
      squares.add(w[i] * residual * residual);
    }
    double chiSquared = squares.value();
    double scatter = n > 2 ? Math.sqrt(chiSquared / (n - 2)) : Double.NaN;
    return new LineFit(
        n,
        tMean,
        yMean,
        slope,
        1 / Math.sqrt(weight),
        1 / Math.sqrt(stt.value()),
        chiSquared,
        scatter);
  }

  private static double weightedMean(double[] x, double[] w, double weight) {
    Sum sum = new Sum();
    double first = x[0];
    for (int i = 0; i < x.length; i++) {
      sum.add(w[i] * (Finite.require(x[i], "coordinate") - first));
    }
    return first + sum.value() / weight;
  }

  /** The line at t. */
  public double at(double t) {
    return yMean + slope * (t - tMean);
  }

  /** Standard uncertainty of the line itself at t (not of a new point there). */
  public double uAt(double t) {
    return Math.hypot(uCentre, uSlope * (t - tMean));
  }

  /** The line at t with its uncertainty as an own normal part of the given name. */
  public Estimate predict(double t, String part) {
    return Estimate.of(at(t), Part.own(part, uAt(t), Shape.NORMAL));
  }

  /** The line at t = 0, and its standard uncertainty. */
  public double intercept() {
    return at(0);
  }

  /** Standard uncertainty of the intercept. */
  public double uIntercept() {
    return uAt(0);
  }

  /** Covariance of intercept and slope. */
  public double covariance() {
    return -tMean * uSlope * uSlope;
  }

  /** Correlation of intercept and slope, -1 to 1. */
  public double correlation() {
    return covariance() / (uIntercept() * uSlope);
  }

  /** Where the line reaches y; the slope must not be 0. */
  public double inverse(double y) {
    return tMean + (y - yMean) / slope;
  }
}
