package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tripline.truth.Rng;

class CholeskyTest {
  /**
   * The textbook matrix with the factor (2 . . / 6 1 . / -8 5 3): determinant 36 (from memory, and
   * multiplied out by hand).
   */
  @Test
  void aKnownFactor() {
    double[][] a = {{4, 0, 0}, {12, 37, 0}, {-16, -43, 98}};
    assertThat(Cholesky.decompose(a, 3)).isCloseTo(Math.log(36), within(1e-14));
    assertThat(a[0][0]).isEqualTo(2);
    assertThat(a[1]).startsWith(6, 1);
    assertThat(a[2]).containsExactly(-8, 5, 3);
  }

  @Test
  void solvesWhatItMultiplied() {
    Rng rng = new Rng(8);
    for (int n = 1; n <= 12; n++) {
      double[][] a = new double[n][n];
      for (int k = 0; k < n + 2; k++) {
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
          v[i] = rng.gaussian();
        }
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n; j++) {
            a[i][j] += v[i] * v[j];
          }
        }
      }
      double[] x = new double[n];
      double[] b = new double[n];
      for (int i = 0; i < n; i++) {
        x[i] = rng.gaussian();
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          b[i] += a[i][j] * x[j];
        }
      }
      assertThat(Cholesky.decompose(a, n)).isFinite();
      Cholesky.forward(a, b, n);
      Cholesky.backward(a, b, n);
      assertThat(b).containsExactly(x, within(1e-6));
    }
  }

  @Test
  void saysWhenAMatrixIsNotPositiveDefinite() {
    assertThat(Cholesky.decompose(new double[][] {{1, 0}, {2, 1}}, 2)).isNaN();
    assertThat(Cholesky.decompose(new double[][] {{Double.NaN}}, 1)).isNaN();
  }
}
