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
      final double[] pivot = a[j];
      double diagonal = pivot[j];
      for (int k = 0; k < j; k++) {
        diagonal -= pivot[k] * pivot[k];
      }
      if (!(diagonal > 0)) {
        return Double.NaN;
      }
      double root = Math.sqrt(diagonal);
      pivot[j] = root;
      logDeterminant += 2 * Math.log(root);
      for (int i = j + 1; i < n; i++) {
        final double[] row = a[i];
        double sum = row[j];
        for (int k = 0; k < j; k++) {
          sum -= row[k] * pivot[k];
        }
        row[j] = sum / root;
      }
    }
    return logDeterminant;
  }

  /** Solves L y = b in place. */
  static void forward(double[][] l, double[] b, int n) {
    for (int i = 0; i < n; i++) {
      final double[] row = l[i];
      double sum = b[i];
      for (int k = 0; k < i; k++) {
        sum -= row[k] * b[k];
      }
      b[i] = sum / row[i];
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
