package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers against {@link Double#parseDouble} and {@link BigDecimal}. */
class NumbersTest {
  private final Decimal decimal = new Decimal();

  @Test
  void positionsAreTheNearestDouble() {
    Random random = new Random(20260302);
    for (int i = 0; i < 60_000; i++) {
      assertNearest(anyNumber(random));
    }
  }

  /** Numbers half way between two doubles, and just off it: the hard cases of rounding. */
  @Test
  void numbersHalfWayBetweenTwoDoublesGoToTheEvenOne() {
    Random random = new Random(5);
    for (int i = 0; i < 20_000; i++) {
      double v = Double.longBitsToDouble((random.nextLong() & 0xFFFFFFFFFFFFFL) | bits(random));
      BigDecimal half = new BigDecimal(v).add(new BigDecimal(Math.ulp(v) / 2));
      assertNearest(half.toPlainString());
      String digits = half.round(new java.math.MathContext(19, RoundingMode.DOWN)).toString();
      assertNearest(digits);
      assertNearest(half.round(new java.math.MathContext(18, RoundingMode.UP)).toString());
    }
    // 2^53 + 1, the first whole number that is no double.
    assertNearest("9007199254740993");
    assertNearest("90071992547409930e-1");
    assertNearest("9007199254740993.0000000000000000000001");
  }

  private static long bits(Random random) {
    return (long) (1023 - 60 + random.nextInt(120)) << 52;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "0.0",
        "-0.000",
        "5.",
        ".5",
        "-.5",
        "+1",
        "1e3",
        "1E-3",
        "1e+05",
        "000001.5",
        "4.9e-324",
        "2.4e-324",
        "1.7976931348623157e308",
        "1e400",
        "1e-400",
        "-1e999999999999",
        "0e999999999",
        "123456789012345678901234567890",
        "9223372036854775807",
        "9223372036854775808",
        "18446744073709551616",
        "0.00000000000000000000000000000000000000000000000000000000000000001"
      })
  void readsWhatParseDoubleReads(String text) {
    assertNearest(text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        "+",
        ".",
        "-.",
        "e5",
        "1e",
        "1e+",
        "1.2.3",
        "--1",
        "+-1",
        "1 2",
        "NaN",
        "nan",
        "Infinity",
        "-inf",
        "0x10",
        "1f",
        "1d",
        "1_000",
        "1,5",
        "l2",
        "1O",
        "\u0661",
        "1e5.0",
        "12a"
      })
  void refusesWhatIsNoNumber(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    assertThat(decimal.parse(bytes, 0, bytes.length, (byte) '.')).isFalse();
  }

  @Test
  void timesAreExactToTheNanosecond() {
    Random random = new Random(42);
    int[] places = {9, 6, 3, 0};
    for (int i = 0; i < 60_000; i++) {
      String text = anyNumber(random);
      int unit = places[random.nextInt(4)];
      assertThat(nanos(text, unit)).as("%s * 10^%d", text, unit).isEqualTo(exact(text, unit));
    }
  }

  @Test
  void timesOfTheLargestSizes() {
    assertThat(nanos("1700000000.123456789", 9)).isEqualTo(1700000000123456789L);
    assertThat(nanos("9223372036.854775807", 9)).isEqualTo(Long.MAX_VALUE);
    assertThat(nanos("-9223372036.854775807", 9)).isEqualTo(-Long.MAX_VALUE);
    assertThat(nanos("9223372036.854775808", 9)).isEqualTo(Decimal.OUT_OF_RANGE);
    assertThat(nanos("9223372036.8547758074999", 9)).isEqualTo(Long.MAX_VALUE);
    assertThat(nanos("9300000000", 9)).isEqualTo(Decimal.OUT_OF_RANGE);
    assertThat(nanos("0.0000000005", 9)).isEqualTo(1);
    assertThat(nanos("-0.0000000005", 9)).isEqualTo(-1);
    assertThat(nanos("0.00000000049999999999999999999999", 9)).isZero();
    assertThat(nanos("1e-30", 9)).isZero();
    assertThat(nanos("1e999999", 9)).isEqualTo(Decimal.OUT_OF_RANGE);
    assertThat(nanos("1.234000000000000000e+00", 9)).isEqualTo(1_234_000_000L);
  }

  private long nanos(String text, int places) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    assertThat(decimal.parse(bytes, 0, bytes.length, (byte) '.')).as(text).isTrue();
    return decimal.toNanos(places);
  }

  private static long exact(String text, int places) {
    BigDecimal ns =
        new BigDecimal(text).scaleByPowerOfTen(places).setScale(0, RoundingMode.HALF_UP);
    return ns.abs().compareTo(BigDecimal.valueOf(Long.MAX_VALUE)) > 0
        ? Decimal.OUT_OF_RANGE
        : ns.longValueExact();
  }

  private void assertNearest(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    assertThat(decimal.parse(bytes, 0, bytes.length, (byte) '.')).as(text).isTrue();
    double v = decimal.toDouble(bytes, 0, bytes.length, (byte) '.');
    if (Double.doubleToRawLongBits(v) != Double.doubleToRawLongBits(Double.parseDouble(text))) {
      throw new AssertionError(text + " gave " + v);
    }
  }

  /** Every shape of number a logger may write, up to 25 digits, with and without exponent. */
  static String anyNumber(Random random) {
    StringBuilder text = new StringBuilder();
    text.append(random.nextInt(3) == 0 ? "-" : random.nextInt(20) == 0 ? "+" : "");
    int digits = 1 + random.nextInt(random.nextInt(4) == 0 ? 25 : 12);
    int point = random.nextInt(digits + 1);
    for (int i = 0; i < digits; i++) {
      if (i == point && random.nextInt(8) > 0) {
        text.append('.');
      }
      text.append((char) ('0' + random.nextInt(10)));
    }
    if (random.nextInt(5) == 0) {
      text.append(random.nextBoolean() ? 'e' : 'E').append(random.nextInt(80) - 40);
    }
    return text.toString();
  }
}
