package tripline.reduce;

/**
 * Cholesky decomposition of a small symmetric positive definite matrix, in place, and solutions
 * with it.
 */
final class Cholesky {
  private Cholesky() {}

  /**
   * Decomposes the leading n x n block of {@code a} into its lower triangle.
   *
   * @return the logarithm of the determinant, or NaN where the matrix is not positive definite
   */
  static double decompose(double[][] a, int n) {
    double logDeterminant = 0;
    for (int j = 0; j < n; j++) {
      double diagonal = a[j][j];
      for (int k = 0; k < j; k++) {
        diagonal -= a[j][k] * a[j][k];
      }
      if (!(diagonal > 0)) {
        return Double.NaN;
      }
      double root = Math.sqrt(diagonal);
      a[j][j] = root;
      logDeterminant += 2 * Math.log(root);
      for (int i = j + 1; i < n; i++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= a[i][k] * a[j][k];
        }
        a[i][j] = sum / root;
      }
    }
    return logDeterminant;
  }

  /** Solves L y = b in place. */
  static void forward(double[][] l, double[] b, int n) {
    for (int i = 0; i < n; i++) {
      double sum = b[i];
      for (int k = 0; k < i; k++) {
        sum -= l[i][k] * b[k];
      }
      b[i] = sum / l[i][i];
    }
  }

  /** Solves L' x = y in place. */
  static void backward(double[][] l, double[] y, int n) {
    for (int i = n - 1; i >= 0; i--) {
      double sum = y[i];
      for (int k = i + 1; k < n; k++) {
        sum -= l[k][i] * y[k];
      }
      y[i] = sum / l[i][i];
    }
  }
}
