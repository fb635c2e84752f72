package tripline.measure;

import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Scatter under repeatability conditions: same method, operator, equipment and place, within a
 * short time (ISO 5725-1, ISO 5725-2).
 *
 * @param sd repeatability standard deviation s_r, at least 0
 * @param dof degrees of freedom it was found with; 0: nothing is known, infinite: it is known
 */
public record Repeatability(double sd, double dof) {

  /** Nothing known of the scatter. */
  public static final Repeatability UNKNOWN = new Repeatability(0, 0);

  /**
   * @throws IllegalArgumentException if a figure is negative or not a number
   */
  public Repeatability {
    Finite.requireNotNegative(sd, "standard deviation");
    if (!(dof >= 0)) {
      throw new IllegalArgumentException("degrees of freedom: " + dof);
    }
  }

  /** Scatter of one series; {@link #UNKNOWN} from a single value. */
  public static Repeatability of(Moments series) {
    return series.n() > 1 ? new Repeatability(series.sd(), series.n() - 1) : UNKNOWN;
  }

  /** Pooled scatter of several series about their own means (ISO 5725-2 7.4.2). */
  public static Repeatability pooled(List<Moments> series) {
    return series.stream().map(Repeatability::of).reduce(UNKNOWN, Repeatability::pool);
  }

  /** Both together, weighted by degrees of freedom; what is known outright prevails. */
  public Repeatability pool(Repeatability other) {
    if (Double.isInfinite(dof)) {
      return this;
    }
    if (Double.isInfinite(other.dof) || dof == 0) {
      return other;
    }
    double squares = dof * sd * sd + other.dof * other.sd * other.sd;
    return new Repeatability(Math.sqrt(squares / (dof + other.dof)), dof + other.dof);
  }

  /** Not smaller than what the measurement alone must scatter. */
  public Repeatability atLeast(double leastSd) {
    return sd >= leastSd ? this : new Repeatability(leastSd, dof);
  }

  /**
   * Repeatability limit r = 1.96 sqrt 2 s_r: two single results differ by less in 95 of 100 cases
   * (ISO 5725-6 4.1).
   */
  public double limit() {
    return criticalRange(2);
  }

  /**
   * The range of n results is within this in 95 of 100 cases (ISO 5725-6 4.2, critical range).
   *
   * @param n results, at least 2
   */
  public double criticalRange(int n) {
    return sd * RangeLaw.quantile(0.95, n);
  }

  /**
   * Upper confidence bound of the true standard deviation, {@code sd sqrt(nu / chi2)}; infinite if
   * nothing is known.
   */
  public double upperBound(double confidence) {
    Finite.requireProbability(confidence, "confidence");
    if (Double.isInfinite(dof)) {
      return sd;
    }
    if (dof == 0) {
      return Double.POSITIVE_INFINITY;
    }
    return sd
        * Math.sqrt(
            dof / ChiSquaredDistribution.of(dof).inverseCumulativeProbability(1 - confidence));
  }

  /**
   * Relative uncertainty of a standard deviation from n values of a normal law, standard deviation
   * over expectation (JCGM 100 Table E.1: 76 % for n = 2, 24 % for n = 10).
   *
   * @param n values, at least 2
   */
  public static double relativeUncertainty(int n) {
    Finite.requireAtLeast(2, n, "values");
    // Gamma((nu+1)/2) / Gamma(nu/2) by its recurrence from nu = 1.
    double ratio = 1 / Math.sqrt(Math.PI);
    for (int nu = 1; nu < n - 1; nu++) {
      ratio = 0.5 * nu / ratio;
    }
    double c4 = Math.sqrt(2.0 / (n - 1)) * ratio;
    return Math.sqrt(1 - c4 * c4) / c4;
  }
}
