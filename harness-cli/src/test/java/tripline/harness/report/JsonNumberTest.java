package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The short way to a number's digits against the same by {@link java.math.BigDecimal}. */
class JsonNumberTest {
  @Test
  void theShortWayGivesTheDigitsOfTheLongOne() {
    SplittableRandom random = new SplittableRandom(114);
    for (int i = 0; i < 200_000; i++) {
      double size = Math.pow(10, -8 + 15 * random.nextDouble());
      same(random.nextBoolean() ? size : -size);
      same(Math.rint(size * 1e4) / 1e4);
    }
  }

  @Test
  void alsoAtHalvesAndBesideThem() {
    SplittableRandom random = new SplittableRandom(207);
    for (int i = 0; i < 50_000; i++) {
      // A half in the tenth digit that a double holds exactly, and its neighbours.
      double half = (random.nextInt(100_000, 1_000_000) * 1_024L + 0.5) / 1_024;
      double tie = random.nextInt(100_000_000, 1_000_000_000) / 8.0 / (1 << random.nextInt(20));
      for (double value : new double[] {half, tie, tie / 1e3}) {
        same(value);
        same(Math.nextUp(value));
        same(Math.nextDown(value));
      }
    }
    assertThat(JsonNumber.of(1234.000005)).isEqualTo("1234.00001");
    assertThat(JsonNumber.of(262144.00048828125)).isEqualTo("262144.0005");
    assertThat(JsonNumber.of(0.5 + 0x1p-28)).isEqualTo("0.500000004");
  }

  @Test
  void alsoAtPowersOfTen() {
    for (int power = -10; power <= 9; power++) {
      double value = Double.parseDouble("1e" + power);
      for (double factor : new double[] {1, 0.9999999995, 0.99999999949, 0.999999999, 9.5}) {
        same(value * factor);
        same(-value * factor);
      }
      same(Math.nextUp(value));
      same(Math.nextDown(value));
    }
    same(0);
    same(-0.0);
  }

  private static void same(double value) {
    assertThat(JsonNumber.of(value)).isEqualTo(JsonNumber.exact(value));
  }
}
