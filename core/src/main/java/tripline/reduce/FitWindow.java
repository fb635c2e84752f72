package tripline.reduce;

import org.jspecify.annotations.Nullable;

/**
 * The readings about an instant, boiled down to the normal equations of a fit by Legendre
 * polynomials up to degree {@value #TERMS} - 1 over [centre - h, centre + h]. Weights are inverse
 * variances, in units of the noise of one reading (readings) or absolute (count edges). Size does
 * not depend on how many readings went in.
 */
final class FitWindow {
  static final int TERMS = 12;

  /** What the observations are. */
  enum Kind {
    READINGS,
    COUNT_EDGES
  }

  /** Which readings a window takes, and so where in it the instant lies. */
  enum Reach {
    BOTH_SIDES(0),
    BEFORE(1),
    AFTER(-1);

    /** The instant, in half-widths from the middle of the window. */
    final double tau;

    Reach(double tau) {
      this.tau = tau;
    }
  }

  final Kind kind;
  final Reach reach;
  final double halfWidthS;
  final double origin;

  /** Lower triangle of the normal matrix. */
  final double[][] g = new double[TERMS][];

  final double[] b = new double[TERMS];
  private final double[] p = new double[TERMS];
  double yy;
  double logWeights;

  /** Distinct points that went in. */
  int points;

  /** Readings or count edges they stand for. */
  double observations;

  /** The one reading nearest to the instant: what is left where nothing can be fitted. */
  double nearest = Double.NaN;

  /** What of the edges' errors is no chance; null where that is not known. */
  @Nullable SamplingBeat beat;

  private double nearestTau = Double.POSITIVE_INFINITY;

  /**
   * @param origin reading subtracted from all others, so that large counts lose no digits
   */
  FitWindow(Kind kind, Reach reach, double halfWidthS, double origin) {
    this.kind = kind;
    this.reach = reach;
    this.halfWidthS = halfWidthS;
    this.origin = origin;
    for (int i = 0; i < TERMS; i++) {
      g[i] = new double[i + 1];
    }
  }

  /**
   * Adds an observation.
   *
   * @param tau time from the middle in half-widths, -1..1
   * @param reading reading
   * @param weight inverse variance
   */
  void add(double tau, double reading, double weight) {
    Legendre.values(tau, p, TERMS);
    accumulate(p, reading, weight);
    if (kind == Kind.READINGS) {
      // A weight stands for that many equal readings.
      observations += weight;
      near(tau, reading);
    } else {
      logWeights += Math.log(weight);
      observations++;
    }
    points++;
  }

  /**
   * Adds readings close together by their mean.
   *
   * @param means of the polynomials over them
   * @param scatter sum of their squares about a straight line of their own, which takes one more
   *     degree of freedom than the mean
   */
  void addSlice(double[] means, double mean, int readings, double scatter) {
    accumulate(means, mean, readings);
    yy += scatter;
    observations += Math.max(1, readings - 1);
    points += readings;
  }

  private void accumulate(double[] functions, double reading, double weight) {
    double y = reading - origin;
    for (int i = 0; i < TERMS; i++) {
      double wp = weight * functions[i];
      b[i] += wp * y;
      double[] row = g[i];
      for (int j = 0; j <= i; j++) {
        row[j] += wp * functions[j];
      }
    }
    yy += weight * y * y;
  }

  /** A single reading passes by: keeps the one nearest to the instant. */
  void near(double tau, double reading) {
    double off = Math.abs(tau - reach.tau);
    if (off < nearestTau) {
      nearestTau = off;
      nearest = reading;
    }
  }

  /**
   * Mean slope of the window by a straight line, reading units per second; 0 with fewer than two
   * points.
   */
  double meanSpeed() {
    double determinant = g[0][0] * g[1][1] - g[1][0] * g[1][0];
    if (points < 2 || !(determinant > 1e-12 * g[0][0] * g[1][1])) {
      return 0;
    }
    return (g[0][0] * b[1] - g[1][0] * b[0]) / determinant / halfWidthS;
  }
}
