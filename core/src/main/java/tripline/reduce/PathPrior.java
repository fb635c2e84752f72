package tripline.reduce;

/**
 * How a driven path may depart from a straight line within a fit window: speed ripple of relative
 * size r spread over frequencies up to f. A sinusoid of circular frequency w and random phase has
 * Legendre coefficients of variance ((2k+1) j_k(w h))² / 2 times its amplitude squared (expansion
 * of a plane wave, Abramowitz and Stegun 10.1.47). The candidates run from "straight" to "a pause
 * or a turn of direction"; which of them holds is left to the evidence of the recording.
 */
final class PathPrior {
  /** Relative speed ripple of the candidates. */
  static final double[] RIPPLE = {0.01, 0.03, 0.1, 0.3, 1.0};

  /**
   * Highest ripple frequency of the candidates, Hz: a handwheel is cranked at about one turn a
   * second, rippling once and twice a turn.
   */
  static final double[] FREQUENCY_HZ = {0.5, 1.0, 2.0, 4.0};

  /** The straight line and every pair of ripple and frequency. */
  static final int CANDIDATES = 1 + RIPPLE.length * FREQUENCY_HZ.length;

  /** Last candidate that is as good as straight: the least ripple. */
  static final int STEADIEST = FREQUENCY_HZ.length;

  /** Prior share of the straight line. */
  private static final double STRAIGHT_SHARE = 0.25;

  /**
   * Coefficients whose variance is known: those of a fit, and beyond them what a fit leaves out.
   */
  static final int TERMS = FitWindow.TERMS + 8;

  private static final int STEPS = 8;

  private PathPrior() {}

  /**
   * Variances of the Legendre coefficients of every candidate, for unit speed: {@code
   * [candidate][coefficient]}, from coefficient 2 on; nothing for the straight line.
   *
   * @param halfWidthS half-width of the window, s
   */
  static double[][] table(double halfWidthS) {
    double[][] table = new double[CANDIDATES][TERMS];
    for (int c = 1; c < CANDIDATES; c++) {
      variances(c, halfWidthS, table[c]);
    }
    return table;
  }

  /**
   * Rms distance of a candidate's path from a straight line where it ripples at its highest
   * frequency, for unit speed.
   */
  static double departure(int candidate) {
    return candidate == 0 ? 0 : ripple(candidate) / (2 * Math.PI * topHz(candidate));
  }

  private static double ripple(int candidate) {
    return RIPPLE[(candidate - 1) / FREQUENCY_HZ.length];
  }

  private static double topHz(int candidate) {
    return FREQUENCY_HZ[(candidate - 1) % FREQUENCY_HZ.length];
  }

  /** Logarithm of a candidate's share before any evidence. */
  static double logShare(int candidate) {
    return candidate == 0
        ? Math.log(STRAIGHT_SHARE)
        : Math.log((1 - STRAIGHT_SHARE) / (CANDIDATES - 1));
  }

  /**
   * Variances of the Legendre coefficients k = 2.. of a candidate, for unit speed.
   *
   * @param candidate 1 .. {@link #CANDIDATES} - 1
   * @param halfWidthS half-width of the window, s
   * @param variance filled from index 2
   */
  static void variances(int candidate, double halfWidthS, double[] variance) {
    double ripple = ripple(candidate);
    double top = topHz(candidate);
    double[] j = new double[TERMS];
    java.util.Arrays.fill(variance, 0);
    for (int s = 0; s < STEPS; s++) {
      double w = 2 * Math.PI * top * (0.25 + 0.75 * (s + 0.5) / STEPS);
      double amplitude = ripple / w * Math.sqrt(2);
      sphericalBessel(w * halfWidthS, j);
      for (int k = 2; k < TERMS; k++) {
        double c = amplitude * (2 * k + 1) * j[k];
        variance[k] += c * c / 2 / STEPS;
      }
    }
  }

  /**
   * Spherical Bessel functions of the first kind by Miller's backward recursion (Abramowitz and
   * Stegun 10.1.19, 10.5).
   */
  static void sphericalBessel(double x, double[] j) {
    int start = 2 * TERMS + (int) (2 * x) + 10;
    double above = 0;
    double here = 1e-280;
    for (int k = start; k >= 0; k--) {
      if (k < j.length) {
        j[k] = here;
      }
      double below = (2 * k + 1) / x * here - above;
      above = here;
      here = below;
      if (Math.abs(here) > 1e200) {
        here *= 1e-200;
        above *= 1e-200;
        for (int i = k; i < j.length; i++) {
          j[i] *= 1e-200;
        }
      }
    }
    // The last step computed j_{-1}; j_0 = sin x / x fixes the scale, or j_1 where that vanishes.
    double j0 = Math.sin(x) / x;
    double j1 = j0 / x - Math.cos(x) / x;
    double scale = Math.abs(j0) > Math.abs(j1) ? j0 / j[0] : j1 / j[1];
    for (int k = 0; k < j.length; k++) {
      j[k] *= scale;
    }
  }
}
