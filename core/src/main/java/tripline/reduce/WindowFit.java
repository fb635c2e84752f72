package tripline.reduce;

/**
 * Fits of one {@link FitWindow} under every candidate of {@link PathPrior}: evidence, position and
 * speed at the centre with their variances, residual.
 */
final class WindowFit {
  private static final int N = FitWindow.TERMS;

  final FitWindow window;
  final double[] logEvidence = new double[PathPrior.CANDIDATES];
  final double[] value = new double[PathPrior.CANDIDATES];
  final double[] variance = new double[PathPrior.CANDIDATES];
  final double[] speed = new double[PathPrior.CANDIDATES];
  final double[] speedVariance = new double[PathPrior.CANDIDATES];
  final double[] residual = new double[PathPrior.CANDIDATES];
  final double[] freedom = new double[PathPrior.CANDIDATES];

  private static final double[] AT = new double[N];
  private static final double[] SLOPE = new double[N];

  static {
    Legendre.values(0, AT, N);
    Legendre.slopes(AT, SLOPE, N);
  }

  /**
   * @param noise standard deviation of an observation of weight one
   * @param scale speed the ripple is relative to, reading units per second
   */
  WindowFit(FitWindow window, double noise, double scale) {
    this.window = window;
    double[] prior = new double[N];
    double[][] l = new double[N][N];
    double[] m = new double[N];
    double[] q = new double[N];
    for (int c = 0; c < PathPrior.CANDIDATES; c++) {
      int n = c == 0 ? 2 : N;
      if (c > 0) {
        PathPrior.variances(c, window.halfWidthS, prior);
      }
      solve(c, n, noise, scale * scale, prior, l, m, q);
    }
  }

  private void solve(
      int c,
      int n,
      double noise,
      double scale2,
      double[] prior,
      double[][] l,
      double[] m,
      double[] q) {
    double s2 = noise * noise;
    double logPrior = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        l[i][j] = window.g[i][j] / s2;
      }
      m[i] = window.b[i] / s2;
      if (i >= 2) {
        double v = Math.max(prior[i] * scale2, 1e-14 * s2);
        l[i][i] += 1 / v;
        logPrior -= Math.log(v);
      }
    }
    double logDeterminant = Cholesky.decompose(l, n);
    if (Double.isNaN(logDeterminant)) {
      logEvidence[c] = Double.NEGATIVE_INFINITY;
      return;
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
    value[c] = dot(AT, m, n) + window.origin;
    speed[c] = dot(SLOPE, m, n) / window.halfWidthS;
    variance[c] = quadratic(l, AT, q, n);
    speedVariance[c] = quadratic(l, SLOPE, q, n) / (window.halfWidthS * window.halfWidthS);
    residual[c] = residual(m, n) / s2;
    freedom[c] = window.observations - n + priorShare(l, prior, scale2, s2, q, n);
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
