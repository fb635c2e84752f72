package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Rfc3339Test {
  private final StampClock clock = new StampClock();

  /** RFC 3339 clause 5.8, Examples. */
  @ParameterizedTest
  @CsvSource({
    "1985-04-12T23:20:50.52Z, 482196050520000000",
    "1996-12-19T16:39:57-08:00, 851042397000000000",
    "1996-12-20T00:39:57Z, 851042397000000000",
    "1990-12-31T23:59:60Z, 662688000000000000",
    "1990-12-31T15:59:60-08:00, 662688000000000000",
    "1937-01-01T12:00:27.87+00:20, -1041337172130000000"
  })
  void examplesOfTheStandard(String text, long ns) {
    assertThat(nanos(text)).isEqualTo(ns);
  }

  /** RFC 3339 clause 5.6: letters in either case, and its note on a blank for T. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "1985-04-12t23:20:50.52z",
        "1985-04-12 23:20:50.52Z",
        "1985-04-12T23:20:50.520000000Z",
        "1985-04-12T23:20:50.5200000004999Z",
        "1985-04-12T23:20:50.52-00:00",
        "1985-04-13T23:19:50.52+23:59"
      })
  void otherWritingsOfOneInstant(String text) {
    assertThat(nanos(text)).isEqualTo(482196050520000000L);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "1985",
        "1985-04-12",
        "1985-04-12T23:20:50",
        "1985-04-12T23:20Z",
        "1985-4-12T23:20:50Z",
        "1985-04-12T23:20:50.Z",
        "1985-04-12T23:20:50.5",
        "1985-04-12T23:20:50,5Z",
        "1985-04-12T24:00:00Z",
        "1985-04-12T23:60:00Z",
        "1985-13-12T23:20:50Z",
        "1985-00-12T23:20:50Z",
        "1985-04-31T23:20:50Z",
        "1985-02-29T23:20:50Z",
        "1900-02-29T00:00:00Z",
        "1985-04-00T23:20:50Z",
        "1985-04-12T23:20:61Z",
        "1985-04-12T23:20:60Z",
        "1985-04-12T23:59:60Z",
        "1990-12-31T23:59:60-08:00",
        "1985-04-12T23:20:50+24:00",
        "1985-04-12T23:20:50+01:60",
        "1985-04-12T23:20:50+0100",
        "1985-04-12T23:20:50+1:00",
        "1985-04-12T23:20:50Zulu",
        "1985-04-12_23:20:50Z",
        "198A-04-12T23:20:50Z",
        "1985-04-12T2l:20:50Z",
        "1985/04/12T23:20:50Z",
        " 1985-04-12T23:20:50Z"
      })
  void refusesWhatIsNoStamp(String text) {
    assertThat(nanos(text)).isEqualTo(StampClock.NO_STAMP);
  }

  @Test
  void leapYearsOfTheGregorianCalendar() {
    assertThat(nanos("2000-02-29T00:00:00Z")).isEqualTo(951782400_000_000_000L);
    assertThat(nanos("1972-02-29T00:00:00Z")).isEqualTo(68169600_000_000_000L);
  }

  @Test
  void yearsBeyondThoseOfNanosecondsAreOutOfRange() {
    assertThat(nanos("0000-01-01T00:00:00Z")).isEqualTo(StampClock.OUT_OF_RANGE);
    assertThat(nanos("9999-12-31T23:59:59Z")).isEqualTo(StampClock.OUT_OF_RANGE);
    assertThat(nanos("2261-12-31T23:59:59Z")).isPositive();
  }

  /** Against java.time, over the years that nanoseconds reach. */
  @Test
  void agreesWithJavaTime() {
    Random random = new Random(3339);
    for (int i = 0; i < 20_000; i++) {
      long second = random.nextLong(-9_200_000_000L, 9_200_000_000L);
      Instant instant = Instant.ofEpochSecond(second, random.nextInt(1_000_000_000));
      int minutes = random.nextInt(2 * 18 * 60 + 1) - 18 * 60;
      OffsetDateTime stamp = instant.atOffset(ZoneOffset.ofTotalSeconds(minutes * 60));
      long ns = instant.getEpochSecond() * 1_000_000_000L + instant.getNano();
      assertThat(nanos(format(stamp))).as(stamp.toString()).isEqualTo(ns);
    }
  }

  private static String format(OffsetDateTime stamp) {
    return java.time.format.DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.nnnnnnnnnxxx")
        .format(stamp);
  }

  /** A leap second in a recording is a second like any other: no step back after it. */
  @Test
  void timeRunsEvenlyOverALeapSecond() {
    String[] seconds = {"58", "59", "60"};
    long before = 0;
    for (String s : seconds) {
      long ns = nanos("2016-12-31T23:59:" + s + ".5Z");
      assertThat(before == 0 ? 1_000_000_000L : ns - before).isEqualTo(1_000_000_000L);
      before = ns;
    }
    assertThat(nanos("2017-01-01T00:00:00.5Z") - before).isEqualTo(1_000_000_000L);
    assertThat(nanos("2017-01-01T00:00:01.5Z") - before).isEqualTo(2_000_000_000L);
  }

  private long nanos(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return clock.nanos(bytes, 0, bytes.length);
  }
}
