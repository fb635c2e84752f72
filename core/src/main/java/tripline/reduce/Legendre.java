package tripline.reduce;

/**
 * Legendre polynomials on [-1, 1], by Bonnet's recursion (Abramowitz and Stegun 8.5.3), and their
 * derivatives.
 */
final class Legendre {
  private Legendre() {}

  /** Fills {@code p[0..n-1]} with P_0(x) .. P_{n-1}(x). */
  static void values(double x, double[] p, int n) {
    p[0] = 1;
    if (n > 1) {
      p[1] = x;
    }
    for (int k = 2; k < n; k++) {
      p[k] = ((2 * k - 1) * x * p[k - 1] - (k - 1) * p[k - 2]) / k;
    }
  }

  /**
   * Fills {@code d[0..n-1]} with the derivatives, given the values of {@link #values}: P'_k =
   * P'_{k-2} + (2k-1) P_{k-1}.
   */
  static void slopes(double[] p, double[] d, int n) {
    d[0] = 0;
    if (n > 1) {
      d[1] = 1;
    }
    for (int k = 2; k < n; k++) {
      d[k] = d[k - 2] + (2 * k - 1) * p[k - 1];
    }
  }

  /** Fills {@code c[0..n-1]} with the second derivatives, given the first ones. */
  static void curvatures(double[] d, double[] c, int n) {
    c[0] = 0;
    if (n > 1) {
      c[1] = 0;
    }
    for (int k = 2; k < n; k++) {
      c[k] = c[k - 2] + (2 * k - 1) * d[k - 1];
    }
  }
}
