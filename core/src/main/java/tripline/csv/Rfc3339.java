package tripline.csv;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Reads date-time stamps of RFC 3339 clause 5.6, with a blank or {@code t} allowed for {@code T}
 * and {@code z} for {@code Z} (notes there), fractions to the nearest nanosecond. Reused from stamp
 * to stamp.
 */
final class Rfc3339 {
  private static final int DAY_SECONDS = 86_400;
  private static final int[] DAYS_BEFORE = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};

  /** Length of {@code yyyy-mm-ddThh:mm:}. */
  static final int TO_MINUTE = 17;

  private long minuteSeconds;
  private int second;
  private int nanos;
  private int zoneAt;

  /** The stamp, if the text is one; a leap second is the second after 23:59:59 (POSIX). */
  static Optional<Instant> instant(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    Rfc3339 stamp = new Rfc3339();
    return stamp.parse(bytes, 0, bytes.length)
        ? Optional.of(Instant.ofEpochSecond(stamp.minuteSeconds + stamp.second, stamp.nanos))
        : Optional.empty();
  }

  /**
   * Reads a stamp.
   *
   * @return false if the bytes are none, or name a date, time or leap second that cannot be
   */
  boolean parse(byte[] bytes, int from, int to) {
    if (to - from < TO_MINUTE + 3 || !shaped(bytes, from)) {
      return false;
    }
    int year = two(bytes, from) * 100 + two(bytes, from + 2);
    int month = two(bytes, from + 5);
    int day = two(bytes, from + 8);
    int hour = two(bytes, from + 11);
    int minute = two(bytes, from + 14);
    second = two(bytes, from + 17);
    if (two(bytes, from) < 0
        || two(bytes, from + 2) < 0
        || month < 1
        || month > 12
        || day < 1
        || day > days(year, month)
        || hour < 0
        || hour > 23
        || minute < 0
        || minute > 59
        || second < 0
        || second > 60) {
      return false;
    }
    minuteSeconds = epochDay(year, month, day) * DAY_SECONDS + hour * 3600L + minute * 60L;
    zoneAt = fraction(bytes, from + 19, to);
    return zoneAt > 0 && zone(bytes, zoneAt, to) && (second < 60 || leap());
  }

  /** Begin of the stamp's minute, seconds since 1970-01-01T00:00:00Z. */
  long minuteSeconds() {
    return minuteSeconds;
  }

  /** Second of the minute, 60 in a leap second. */
  int second() {
    return second;
  }

  /** Fraction of the second, ns, 1000000000 where the digits beyond round up to it. */
  int nanos() {
    return nanos;
  }

  /** Where in the bytes the time offset begins. */
  int zoneAt() {
    return zoneAt;
  }

  private static boolean shaped(byte[] b, int p) {
    byte t = b[p + 10];
    return b[p + 4] == '-'
        && b[p + 7] == '-'
        && (t == 'T' || t == 't' || t == ' ')
        && b[p + 13] == ':'
        && b[p + 16] == ':';
  }

  /** Two digits, or -1. */
  private static int two(byte[] b, int p) {
    int tens = b[p] - '0';
    int ones = b[p + 1] - '0';
    return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? -1 : tens * 10 + ones;
  }

  /** Reads the fraction, if there is one; where it ends, or -1. */
  private int fraction(byte[] bytes, int from, int to) {
    nanos = 0;
    if (bytes[from] != '.') {
      return from;
    }
    int p = from + 1;
    int scale = 100_000_000;
    while (p < to && bytes[p] >= '0' && bytes[p] <= '9') {
      int digit = bytes[p++] - '0';
      nanos += digit * scale;
      if (scale == 0 && p == from + 11 && digit >= 5) {
        nanos++;
      }
      scale /= 10;
    }
    return p == from + 1 || p == to ? -1 : p;
  }

  private boolean zone(byte[] bytes, int p, int to) {
    if (bytes[p] == 'Z' || bytes[p] == 'z') {
      return p + 1 == to;
    }
    if (to - p != 6 || (bytes[p] != '+' && bytes[p] != '-') || bytes[p + 3] != ':') {
      return false;
    }
    int hours = two(bytes, p + 1);
    int minutes = two(bytes, p + 4);
    if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59) {
      return false;
    }
    int offset = hours * 3600 + minutes * 60;
    minuteSeconds += bytes[p] == '+' ? -offset : offset;
    return true;
  }

  /** Leap seconds come at the end of a month, UTC (RFC 3339 clause 5.7). */
  private boolean leap() {
    long next = minuteSeconds + 60;
    return next % DAY_SECONDS == 0 && LocalDate.ofEpochDay(next / DAY_SECONDS).getDayOfMonth() == 1;
  }

  private static boolean leapYear(int year) {
    return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  }

  private static int days(int year, int month) {
    return switch (month) {
      case 2 -> leapYear(year) ? 29 : 28;
      case 4, 6, 9, 11 -> 30;
      default -> 31;
    };
  }

  /** Days since 1970-01-01, proleptic Gregorian, for years from 0. */
  private static long epochDay(int year, int month, int day) {
    int before = year + 399; // years completed since -400, a whole Gregorian cycle early
    long days = before * 365L + before / 4 - before / 100 + before / 400;
    int leapDay = month > 2 && leapYear(year) ? 1 : 0;
    return days + DAYS_BEFORE[month - 1] + leapDay + day - 1 - 865_259L;
  }
}
