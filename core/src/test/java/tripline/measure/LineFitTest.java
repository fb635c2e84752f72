package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineFitTest {

  /** NIST StRD Norris, as y, x pairs. */
  private static final double[] NORRIS = {
    0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3,
    998.5, 996.3, 449.1, 448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8,
    666.9, 339.3, 338.0, 448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8,
    887.6, 119.6, 120.2, 0.3, 0.3, 0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0,
    778.9, 779.0, 10.2, 11.1, 117.6, 118.3, 228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5
  };

  private static Offset<Double> digits(double value, int digits) {
    return within(Math.abs(value) * Math.pow(10, -digits));
  }

  /** JCGM 100:2008 H.3, Table H.6: thermometer calibration, b = y1 + y2 (t - 20). */
  @Test
  void thermometerOfGumH3() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };
    LineFit line = LineFit.of(Arrays.stream(t).map(x -> x - 20).toArray(), b);
    // Published to the digits of the comments, the rest computed.
    assertThat(line.intercept()).isCloseTo(-0.1712037901, within(1e-10)); // -0.1712
    assertThat(line.slope()).isCloseTo(0.002182697740, within(1e-12)); // 0.00218
    assertThat(line.uIntercept()).isCloseTo(0.0028775978, within(1e-10)); // 0.0029
    assertThat(line.uSlope()).isCloseTo(0.000667938773, within(1e-12)); // 0.00067
    assertThat(line.correlation()).isCloseTo(-0.93042960, within(1e-8)); // -0.930
    assertThat(line.scatter()).isCloseTo(0.0034975640, within(1e-10)); // 0.0035
    Estimate at30 = line.predict(10, "fit");
    assertThat(at30.value()).isCloseTo(-0.1493768127, within(1e-10)); // -0.1494
    assertThat(at30.u()).isCloseTo(0.0041385958, within(1e-10)); // 0.0041
  }

  /** NIST StRD Norris, certified. */
  @Test
  void norris() {
    LineFit line = LineFit.of(column(1), column(0));
    assertThat(line.n()).isEqualTo(36);
    assertThat(line.intercept()).isCloseTo(-0.262323073774029, digits(0.26, 11));
    assertThat(line.uIntercept()).isCloseTo(0.232818234301152, digits(0.23, 11));
    assertThat(line.slope()).isCloseTo(1.00211681802045, digits(1, 13));
    assertThat(line.uSlope()).isCloseTo(0.429796848199937e-3, digits(4e-4, 11));
    assertThat(line.scatter()).isCloseTo(0.884796396144373, digits(0.88, 11));
    assertThat(line.chiSquared()).isCloseTo(26.6173985294224, digits(26, 11));
    // R squared from the sums of squares: regression SS 4255954.13232369.
    double regression = line.slope() * line.slope() * 4237993.0222222;
    assertThat(regression / (regression + line.chiSquared()))
        .isCloseTo(0.999993745883712, within(1e-12));
  }

  /** Derived from Norris in exact arithmetic, not certified. */
  @Test
  void readingFromNorris() {
    LineFit line = LineFit.of(column(1), column(0));
    assertThat(line.at(500)).isCloseTo(500.796085936453, within(1e-9));
    assertThat(line.uAt(500)).isCloseTo(0.151502175800191, within(1e-11));
    assertThat(Math.hypot(line.uAt(500), line.scatter()))
        .isCloseTo(0.897673421630752, within(1e-11));
    assertThat(line.at(1000)).isCloseTo(1001.85449494668, within(1e-9));
    assertThat(line.uAt(1000)).isCloseTo(0.289938189417292, within(1e-11));
    assertThat(line.inverse(500)).isCloseTo(499.205595672942, within(1e-9));
  }

  private static double[] column(int offset) {
    double[] column = new double[NORRIS.length / 2];
    Arrays.setAll(column, i -> NORRIS[2 * i + offset]);
    return column;
  }

  /**
   * NIST StRD NoInt1 and NoInt2 certify a line through the origin. Mirroring every point at the
   * origin forces this line through it with the same slope and residual deviation, and the slope's
   * deviation smaller by the root of two.
   */
  @Test
  void linesThroughTheOrigin() {
    double[] x1 = new double[11];
    double[] y1 = new double[11];
    Arrays.setAll(x1, i -> 60 + i);
    Arrays.setAll(y1, i -> 130 + i);
    LineFit noInt1 = mirrored(x1, y1);
    assertThat(noInt1.slope()).isCloseTo(2.07438016528926, within(1e-13));
    assertThat(noInt1.scatter()).isCloseTo(3.56753034006338, within(1e-12));
    assertThat(noInt1.uSlope() * Math.sqrt(2)).isCloseTo(0.165289256198347e-1, within(1e-15));
    LineFit noInt2 = mirrored(new double[] {4, 5, 6}, new double[] {3, 4, 4});
    assertThat(noInt2.slope()).isCloseTo(0.727272727272727, within(1e-14));
    assertThat(noInt2.scatter()).isCloseTo(0.369274472937998, within(1e-14));
    assertThat(noInt2.uSlope() * Math.sqrt(2)).isCloseTo(0.420827318078432e-1, within(1e-15));
  }

  private static LineFit mirrored(double[] x, double[] y) {
    int n = x.length;
    double[] xx = Arrays.copyOf(x, 2 * n);
    double[] yy = Arrays.copyOf(y, 2 * n);
    for (int i = 0; i < n; i++) {
      xx[n + i] = -x[i];
      yy[n + i] = -y[i];
    }
    return LineFit.of(xx, yy);
  }

  /**
   * The variance of a line of N equally spaced points at its centre, edge, half a step and beyond.
   */
  @ParameterizedTest
  @CsvSource({
    "5, 0.2, 0.6, 0.825, 1.1",
    "11, 0.090909, 0.318182, 0.365909, 0.418182",
    "21, 0.047619, 0.177489, 0.190801, 0.204762"
  })
  void attainsTheCramerRaoBoundOfALine(int n, double centre, double edge, double half, double one) {
    double[] t = new double[n];
    double[] u = new double[n];
    Arrays.setAll(t, i -> i);
    Arrays.fill(u, 1);
    LineFit line = LineFit.weighted(t, t, u);
    assertThat(square(line.uAt((n - 1) / 2.0))).isCloseTo(centre, within(1e-6));
    assertThat(square(line.uAt(0))).isCloseTo(edge, within(1e-6));
    assertThat(square(line.uAt(n - 0.5))).isCloseTo(half, within(1e-6));
    assertThat(square(line.uAt(n))).isCloseTo(one, within(1e-6));
    assertThat(square(line.uIntercept()))
        .isCloseTo(2.0 * (2 * n - 1) / (n * (n + 1)), within(1e-12));
    assertThat(square(line.uSlope())).isCloseTo(12.0 / (n * (n * n - 1)), within(1e-12));
  }

  private static double square(double x) {
    return x * x;
  }

  @Test
  void farAwayAbscissaeCostNoDigits() {
    double[] t = {1e9, 1e9 + 1, 1e9 + 2, 1e9 + 3};
    LineFit line = LineFit.of(t, new double[] {1, 3.5, 5, 7});
    assertThat(line.slope()).isCloseTo(1.95, within(1e-12));
    assertThat(line.at(1e9)).isCloseTo(1.2, within(1e-12));
  }

  @Test
  void aPointCountsByItsWeight() {
    double[] t = {0, 1, 2};
    LineFit line = LineFit.weighted(t, new double[] {0, 1, 5}, new double[] {1e-3, 1e-3, 1e3});
    assertThat(line.slope()).isCloseTo(1, within(1e-5));
    assertThat(LineFit.weighted(t, new double[] {0, 1, 2}, new double[] {1, 1, 1}).scatter())
        .isCloseTo(0, within(1e-12));
  }

  @Test
  void refusesWhatIsNoLine() {
    double[] two = {1, 2};
    double[] three = {1, 2, 3};
    double[] same = {1, 1, 1};
    assertThatThrownBy(() -> LineFit.of(two, two)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineFit.of(three, two)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineFit.of(same, three)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineFit.weighted(three, three, new double[] {1, 0, 1}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineFit.of(three, new double[] {1, Double.NaN, 2}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
