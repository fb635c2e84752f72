package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleSupplier;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** JCGM 100:2008 4.3.7, 4.3.9, F.2.2.1 (clause text from memory; digits computed). */
class TypeBTest {
  private static final Offset<Double> TIGHT = within(1e-15);

  @Test
  void elementaryLaws() {
    assertThat(TypeB.rectangular(1)).isCloseTo(0.5773502691896258, TIGHT);
    assertThat(TypeB.resolution(1)).isCloseTo(0.2886751345948129, TIGHT);
    assertThat(TypeB.triangular(1)).isCloseTo(0.4082482904638631, TIGHT);
    assertThat(TypeB.arcsine(1)).isCloseTo(0.7071067811865476, TIGHT);
    assertThat(TypeB.trapezoid(1, 0.5)).isCloseTo(0.4564354645876384, TIGHT);
    assertThat(TypeB.differenceOfReadings(1)).isCloseTo(0.4082482904638631, TIGHT);
  }

  /** JCGM 100 4.3.7: bounds 16.40 and 16.92 (inputs from memory). */
  @Test
  void boundsOfAnExpansionCoefficient() {
    assertThat(TypeB.between(16.40, 16.92)).isCloseTo(0.1501111, within(1e-7));
  }

  @Test
  void trapezoidsLieBetweenTriangleAndRectangle() {
    assertThat(TypeB.trapezoid(2, 0)).isCloseTo(TypeB.triangular(2), TIGHT);
    assertThat(TypeB.trapezoid(2, 1)).isCloseTo(TypeB.rectangular(2), TIGHT);
  }

  @Test
  void lawsScatterAsStated() {
    Random random = new Random(3);
    DoubleSupplier uniform = () -> 2 * random.nextDouble() - 1;
    check(uniform, TypeB.rectangular(1));
    check(() -> 0.5 * (uniform.getAsDouble() + uniform.getAsDouble()), TypeB.triangular(1));
    check(() -> Math.sin(Math.PI * uniform.getAsDouble()), TypeB.arcsine(1));
    check(
        () -> 0.75 * uniform.getAsDouble() + 0.25 * uniform.getAsDouble(), TypeB.trapezoid(1, 0.5));
  }

  private static void check(DoubleSupplier law, double u) {
    double[] sample = new double[50_000];
    Arrays.setAll(sample, i -> law.getAsDouble());
    assertThat(Moments.of(sample).sd()).isCloseTo(u, within(0.02 * u));
  }

  @Test
  void refusesNegativeWidths() {
    assertThatThrownBy(() -> TypeB.rectangular(-1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TypeB.between(2, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TypeB.trapezoid(1, 1.1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TypeB.arcsine(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
