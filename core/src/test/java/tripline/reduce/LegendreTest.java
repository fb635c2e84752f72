package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LegendreTest {
  private static final int N = 12;

  private static double[] values(double x) {
    double[] p = new double[N];
    Legendre.values(x, p, N);
    return p;
  }

  private static double[] slopes(double x) {
    double[] d = new double[N];
    Legendre.slopes(values(x), d, N);
    return d;
  }

  /** Explicit polynomials, Abramowitz and Stegun table 22.9 / 8.6 (from memory). */
  @Test
  void firstPolynomials() {
    for (double x = -1; x <= 1; x += 0.125) {
      double[] p = values(x);
      assertThat(p[0]).isEqualTo(1);
      assertThat(p[1]).isEqualTo(x);
      assertThat(p[2]).isCloseTo((3 * x * x - 1) / 2, within(1e-15));
      assertThat(p[3]).isCloseTo((5 * x * x * x - 3 * x) / 2, within(1e-15));
      assertThat(p[4]).isCloseTo((35 * Math.pow(x, 4) - 30 * x * x + 3) / 8, within(1e-14));
      assertThat(p[5])
          .isCloseTo((63 * Math.pow(x, 5) - 70 * x * x * x + 15 * x) / 8, within(1e-14));
    }
  }

  /**
   * Rodrigues' closed sum, an independent formula: P_n(x) = 2^-n sum C(n,k)^2 (x-1)^(n-k) (x+1)^k.
   */
  @Test
  void againstAClosedSum() {
    for (double x : new double[] {-0.9, -0.31, 0, 0.5, 0.99}) {
      double[] p = values(x);
      for (int n = 0; n < N; n++) {
        double sum = 0;
        double choose = 1;
        for (int k = 0; k <= n; k++) {
          sum += choose * choose * Math.pow(x - 1, n - k) * Math.pow(x + 1, k);
          choose = choose * (n - k) / (k + 1);
        }
        assertThat(p[n]).as("P_%d(%s)", n, x).isCloseTo(sum / Math.pow(2, n), within(1e-13));
      }
    }
  }

  /**
   * P_n(1) = 1, P_n(-1) = (-1)^n, P'_n(1) = n(n+1)/2 (Abramowitz and Stegun 8.2, 22.4; from
   * memory).
   */
  @Test
  void atTheEnds() {
    for (int n = 0; n < N; n++) {
      assertThat(values(1)[n]).isCloseTo(1, within(1e-14));
      assertThat(values(-1)[n]).isCloseTo(n % 2 == 0 ? 1 : -1, within(1e-14));
      assertThat(slopes(1)[n]).isCloseTo(n * (n + 1) / 2.0, within(1e-11));
    }
  }

  @Test
  void slopesAreTheDerivatives() {
    double h = 1e-6;
    for (double x : new double[] {-0.8, 0, 0.3}) {
      for (int n = 0; n < N; n++) {
        double numeric = (values(x + h)[n] - values(x - h)[n]) / (2 * h);
        assertThat(slopes(x)[n]).isCloseTo(numeric, within(1e-7));
      }
    }
  }

  /** Legendre's equation: (1 - x^2) P'' = 2 x P' - n (n + 1) P (Abramowitz and Stegun 8.1.1). */
  @Test
  void curvaturesMeetLegendresEquation() {
    for (double x : new double[] {-1, -0.8, 0, 0.3, 0.95}) {
      double[] curvatures = new double[N];
      Legendre.curvatures(slopes(x), curvatures, N);
      for (int n = 0; n < N; n++) {
        assertThat((1 - x * x) * curvatures[n])
            .isCloseTo(2 * x * slopes(x)[n] - n * (n + 1) * values(x)[n], within(1e-10));
      }
    }
  }

  /**
   * Integral of P_m P_n over [-1, 1] is 2 / (2n + 1) for m = n, else 0 (Abramowitz and Stegun
   * 8.14.11, .13).
   */
  @Test
  void orthogonal() {
    int steps = 20_000;
    double[][] sum = new double[N][N];
    for (int i = 0; i < steps; i++) {
      double[] p = values(-1 + (2 * i + 1.0) / steps);
      for (int m = 0; m < N; m++) {
        for (int n = 0; n < N; n++) {
          sum[m][n] += p[m] * p[n] * 2 / steps;
        }
      }
    }
    for (int m = 0; m < N; m++) {
      for (int n = 0; n < N; n++) {
        assertThat(sum[m][n]).isCloseTo(m == n ? 2.0 / (2 * n + 1) : 0, within(1e-6));
      }
    }
  }
}
