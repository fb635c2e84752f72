package tripline.csv;

/**
 * The clock of a recording that stamps its rows by RFC 3339: nanoseconds since 1970, leap seconds
 * counted where the recording itself shows them, so that time in it runs evenly.
 *
 * <p>A recording that holds 23:59:60 goes on one second later than POSIX time would have it; one
 * that passes over a leap second without a row in it cannot be told from any other.
 *
 * <p>Remembers the minute and the time offset of the last stamp, as bytes: rows come many to a
 * minute.
 */
final class StampClock {
  static final long NO_STAMP = Long.MIN_VALUE;
  static final long OUT_OF_RANGE = Long.MIN_VALUE + 1;

  private static final long SECOND_NS = 1_000_000_000L;
  private static final long MOST_SECONDS = Long.MAX_VALUE / SECOND_NS - 120;
  private static final int[] FRACTION_NS = {
    1_000_000_000, 100_000_000, 10_000_000, 1_000_000, 100_000, 10_000, 1_000, 100, 10, 1
  };

  private final Rfc3339 stamp = new Rfc3339();
  private final byte[] minute = new byte[Rfc3339.TO_MINUTE];
  private final byte[] zone = new byte[6];
  private int zoneLength;
  private long minuteNs;
  private long leapFromNs = Long.MAX_VALUE;
  private long quickNs;

  /**
   * Reads any stamp.
   *
   * @return time, ns, or {@link #NO_STAMP}, or {@link #OUT_OF_RANGE} before 1678 or after 2261
   */
  long nanos(byte[] bytes, int from, int to) {
    if (!stamp.parse(bytes, from, to)) {
      return NO_STAMP;
    }
    if (Math.abs(stamp.minuteSeconds()) > MOST_SECONDS) {
      return OUT_OF_RANGE;
    }
    minuteNs = stamp.minuteSeconds() * SECOND_NS;
    System.arraycopy(bytes, from, minute, 0, minute.length);
    zoneLength = to - stamp.zoneAt();
    System.arraycopy(bytes, stamp.zoneAt(), zone, 0, zoneLength);
    long ns = minuteNs + stamp.second() * SECOND_NS + stamp.nanos();
    if (stamp.second() == 60) {
      leapFromNs = minuteNs + 60 * SECOND_NS;
      return ns;
    }
    return onwards(ns);
  }

  private long onwards(long ns) {
    return ns >= leapFromNs ? ns + SECOND_NS : ns;
  }

  /**
   * Reads a stamp of the same minute and time offset as the last one; {@link #quickNs()} gives it.
   *
   * @return where it ends, or -1 if it is not such a stamp
   */
  int quick(byte[] bytes, int from, int limit) {
    int p = from + Rfc3339.TO_MINUTE;
    if (zoneLength == 0 || p + 3 > limit) {
      return -1;
    }
    for (int i = 0; i < minute.length; i++) {
      if (bytes[from + i] != minute[i]) {
        return -1;
      }
    }
    int tens = bytes[p] - '0';
    int ones = bytes[p + 1] - '0';
    if (tens < 0 || tens > 5 || ones < 0 || ones > 9) {
      return -1;
    }
    p += 2;
    int fraction = 0;
    if (bytes[p] == '.') {
      int first = ++p;
      int digit = bytes[p] - '0';
      while (digit >= 0 && digit <= 9 && p - first < 9) {
        fraction = fraction * 10 + digit;
        digit = bytes[++p] - '0';
      }
      if (p == first) {
        return -1;
      }
      fraction *= FRACTION_NS[p - first];
    }
    if (p + zoneLength > limit) {
      return -1;
    }
    for (int i = 0; i < zoneLength; i++) {
      if (bytes[p++] != zone[i]) {
        return -1;
      }
    }
    quickNs = onwards(minuteNs + (tens * 10 + ones) * SECOND_NS + fraction);
    return p;
  }

  /** Time of the stamp that {@link #quick} has read, ns. */
  long quickNs() {
    return quickNs;
  }
}
