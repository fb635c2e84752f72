package tripline.reduce;

/**
 * Fits of one {@link FitWindow} under every candidate of {@link PathPrior}: evidence, position and
 * speed at the instant with their variances.
 */
final class WindowFit {
  private static final int N = FitWindow.TERMS;
  private static final double MISFIT_SIGMAS = 2;

  /** Share of a variance by chance that an even beat may leave: what it does not follow. */
  private static final double NO_LESS = 1 / 8.0;

  final FitWindow window;
  final double[] logEvidence = new double[PathPrior.CANDIDATES];
  final double[] value = new double[PathPrior.CANDIDATES];
  final double[] variance = new double[PathPrior.CANDIDATES];
  final double[] speed = new double[PathPrior.CANDIDATES];
  final double[] speedVariance = new double[PathPrior.CANDIDATES];
  private final double[][] priors;

  /** The polynomials at the instant, those beyond a fit's included. */
  private final double[] at = new double[PathPrior.TERMS];

  private final double[] slopeAt = new double[PathPrior.TERMS];

  /** Kept once asked for: the choice of a window asks again and again, and each answer is a fit. */
  private int best = -1;

  private double excess = Double.NaN;
  private final double noise;
  private final double scale;

  /**
   * Fits every candidate.
   *
   * @param priors {@link PathPrior#table} of the window's half-width
   * @param noise standard deviation of an observation of weight one
   * @param scale speed the ripple is relative to, reading units per second
   */
  WindowFit(FitWindow window, double[][] priors, double noise, double scale) {
    this(window, priors, noise, scale, 0);
  }

  private WindowFit(
      FitWindow window, double[][] priors, double noise, double scale, int firstCandidate) {
    this.window = window;
    this.priors = priors;
    this.noise = noise;
    this.scale = scale;
    Legendre.values(window.reach.tau, at, PathPrior.TERMS);
    Legendre.slopes(at, slopeAt, PathPrior.TERMS);
    double[][] l = new double[N][N];
    double[] m = new double[N];
    double[] q = new double[N];
    for (int c = firstCandidate; c < PathPrior.CANDIDATES; c++) {
      solve(c, l, m, q);
    }
  }

  /** Fits the least bound candidate only. */
  static Misfit leastBound(FitWindow window, double[][] priors, double noise, double scale) {
    int last = PathPrior.CANDIDATES - 1;
    return new WindowFit(window, priors, noise, scale, last).misfit(last);
  }

  /**
   * How well a candidate meets the observations.
   *
   * @param residual weighted sum of squares of what it leaves, in variances
   * @param freedom observations less the coefficients that they, not the prior, decide
   */
  record Misfit(double residual, double freedom) {
    /**
     * Residual by freedom, such that its median over windows is one where noise is all there is
     * (Wilson and Hilferty's median of chi-square; {@code freedom} more than one).
     */
    double perFreedom() {
      double median = 1 - 2 / (9 * freedom);
      return residual / (freedom * median * median * median);
    }
  }

  /** The candidate of most evidence. */
  int best() {
    if (best < 0) {
      best = 0;
      for (int c = 1; c < PathPrior.CANDIDATES; c++) {
        if (logEvidence[c] + PathPrior.logShare(c) > logEvidence[best] + PathPrior.logShare(best)) {
          best = c;
        }
      }
    }
    return best;
  }

  /** Whether even the best candidate leaves more than noise explains. */
  boolean misfits() {
    return excess() > 1;
  }

  /**
   * How much more the best candidate leaves than noise explains, in variances; 1 where it is not
   * beyond doubt.
   */
  double excess() {
    if (Double.isNaN(excess)) {
      Misfit left = misfit(best());
      double freedom = Math.max(1, left.freedom());
      boolean beyond = left.residual() > freedom + MISFIT_SIGMAS * Math.sqrt(2 * freedom);
      excess = beyond ? left.residual() / freedom : 1;
    }
    return excess;
  }

  /** Solves a candidate once more and looks at what it leaves. */
  Misfit misfit(int candidate) {
    double[][] l = new double[N][N];
    double[] m = new double[N];
    double[] q = new double[N];
    if (!solve(candidate, l, m, q)) {
      return new Misfit(0, 0);
    }
    int n = terms(candidate);
    double s2 = noise * noise;
    double share = priorShare(l, priors[candidate], scale * scale, s2, q, n);
    return new Misfit(residual(m, n) / s2, window.observations - n + share);
  }

  private static int terms(int candidate) {
    return candidate == 0 ? 2 : N;
  }

  /** Whether the candidate could be fitted. */
  private boolean solve(int c, double[][] l, double[] m, double[] q) {
    int n = terms(c);
    double[] prior = priors[c];
    double scale2 = scale * scale;
    double s2 = noise * noise;
    double logPrior = 0;
    for (int i = 0; i < n; i++) {
      final double[] row = l[i];
      final double[] g = window.g[i];
      for (int j = 0; j <= i; j++) {
        row[j] = g[j] / s2;
      }
      m[i] = window.b[i] / s2;
      if (i >= 2) {
        double v = Math.max(prior[i] * scale2, 1e-14 * s2);
        row[i] += 1 / v;
        logPrior -= Math.log(v);
      }
    }
    double logDeterminant = Cholesky.decompose(l, n);
    if (Double.isNaN(logDeterminant)) {
      logEvidence[c] = Double.NEGATIVE_INFINITY;
      return false;
    }
    double bm = 0;
    Cholesky.forward(l, m, n);
    for (int i = 0; i < n; i++) {
      bm += m[i] * m[i];
    }
    Cholesky.backward(l, m, n);
    double misfit = window.yy / s2 - bm;
    logEvidence[c] =
        0.5
            * (logPrior
                - logDeterminant
                - misfit
                - window.observations * Math.log(s2)
                + window.logWeights);
    value[c] = dot(at, m, n) + window.origin;
    speed[c] = dot(slopeAt, m, n) / window.halfWidthS;
    double chance = quadratic(l, at, q, n);
    if (window.beat != null && PathPrior.departure(c) * scale < window.beat.even) {
      Cholesky.backward(l, q, n);
      chance = Math.max(NO_LESS * chance, chance + beating(window.beat, q, n, s2));
    }
    variance[c] = chance + (c == 0 ? 0 : leftOut(prior, at) * scale2);
    speedVariance[c] = quadratic(l, slopeAt, q, n) / (window.halfWidthS * window.halfWidthS);
    return true;
  }

  /** What the beat adds to the variance of the estimate of solution {@code z}, or takes away. */
  private double beating(SamplingBeat beat, double[] z, int n, double s2) {
    double byChance = 0;
    for (int i = 0; i < n; i++) {
      double sum = 0;
      for (int j = 0; j < n; j++) {
        sum += z[j] * (j <= i ? window.g[i][j] : window.g[j][i]);
      }
      byChance += z[i] * sum;
    }
    return beat.beyondChance(z, n, byChance, s2) / (s2 * s2);
  }

  /** Variance of what the candidate holds beyond the polynomials of a fit, for unit speed. */
  private static double leftOut(double[] prior, double[] at) {
    double sum = 0;
    for (int k = N; k < PathPrior.TERMS; k++) {
      sum += prior[k] * at[k] * at[k];
    }
    return sum;
  }

  /** How many of the coefficients the prior, not the data, decides. */
  private static double priorShare(
      double[][] l, double[] prior, double scale2, double s2, double[] q, int n) {
    double share = 0;
    for (int k = 2; k < n; k++) {
      for (int i = 0; i < n; i++) {
        q[i] = i == k ? 1 : 0;
      }
      Cholesky.forward(l, q, n);
      double v = 0;
      for (int i = 0; i < n; i++) {
        v += q[i] * q[i];
      }
      share += v / Math.max(prior[k] * scale2, 1e-14 * s2);
    }
    return share;
  }

  private double residual(double[] m, int n) {
    double sum = window.yy;
    for (int i = 0; i < n; i++) {
      sum -= 2 * m[i] * window.b[i];
      for (int j = 0; j < n; j++) {
        sum += m[i] * m[j] * (j <= i ? window.g[i][j] : window.g[j][i]);
      }
    }
    return Math.max(0, sum);
  }

  private static double quadratic(double[][] l, double[] at, double[] q, int n) {
    System.arraycopy(at, 0, q, 0, n);
    Cholesky.forward(l, q, n);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += q[i] * q[i];
    }
    return sum;
  }

  private static double dot(double[] a, double[] m, int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += a[i] * m[i];
    }
    return sum;
  }
}
