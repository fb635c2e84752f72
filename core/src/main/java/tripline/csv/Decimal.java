package tripline.csv;

import java.nio.charset.StandardCharsets;

/**
 * A decimal number as text, taken apart: {@code significand * 10^exponent}, nothing lost up to
 * nineteen digits. Reused from cell to cell.
 */
final class Decimal {
  /** {@link #toNanos} of a time that a {@code long} of nanoseconds cannot hold. */
  static final long OUT_OF_RANGE = Long.MIN_VALUE;

  /** Exponents beyond are cut to this: far outside of every double, and safe to add to. */
  private static final int MOST_EXPONENT = 100_000;

  private static final long[] TENS = tens();
  private static final long[] MOST = most();

  private boolean negative;
  private long significand;
  private int exponent;
  private boolean anyDropped;
  private boolean firstDroppedRounds;

  private static long[] tens() {
    long[] tens = new long[19];
    tens[0] = 1;
    for (int i = 1; i < tens.length; i++) {
      tens[i] = tens[i - 1] * 10;
    }
    return tens;
  }

  private static long[] most() {
    long[] most = new long[TENS.length];
    for (int i = 0; i < most.length; i++) {
      most[i] = Long.MAX_VALUE / TENS[i];
    }
    return most;
  }

  /** 10 to the power {@code n}, 0 to 18. */
  static long ten(int n) {
    return TENS[n];
  }

  /** The largest whole that times 10 to the power {@code n} is a {@code long}, n 0 to 18. */
  static long most(int n) {
    return MOST[n];
  }

  /**
   * Reads {@code [+-] digits [mark digits] [e [+-] digits]} with a digit on at least one side of
   * the mark.
   *
   * @return false if the bytes are anything else
   */
  boolean parse(byte[] bytes, int from, int to, byte mark) {
    significand = 0;
    exponent = 0;
    anyDropped = false;
    firstDroppedRounds = false;
    int p = from;
    negative = p < to && bytes[p] == '-';
    if (p < to && (bytes[p] == '-' || bytes[p] == '+')) {
      p++;
    }
    int whole = p;
    while (p < to && digit(bytes[p]) >= 0) {
      take(digit(bytes[p++]), 0);
    }
    int digits = p - whole;
    if (p < to && bytes[p] == mark) {
      int part = ++p;
      while (p < to && digit(bytes[p]) >= 0) {
        take(digit(bytes[p++]), -1);
      }
      digits += p - part;
    }
    if (digits == 0) {
      return false;
    }
    return p == to || power(bytes, p, to);
  }

  private void take(int digit, int place) {
    if (!anyDropped && significand <= (Long.MAX_VALUE - digit) / 10) {
      significand = significand * 10 + digit;
      exponent += place;
    } else {
      firstDroppedRounds = anyDropped ? firstDroppedRounds : digit >= 5;
      anyDropped = true;
      exponent += place + 1;
    }
  }

  private boolean power(byte[] bytes, int from, int to) {
    int p = from;
    if (bytes[p] != 'e' && bytes[p] != 'E') {
      return false;
    }
    p++;
    boolean minus = p < to && bytes[p] == '-';
    if (p < to && (bytes[p] == '-' || bytes[p] == '+')) {
      p++;
    }
    int first = p;
    int e = 0;
    while (p < to && digit(bytes[p]) >= 0) {
      e = Math.min(e * 10 + digit(bytes[p++]), MOST_EXPONENT);
    }
    exponent += minus ? -e : e;
    return p > first && p == to;
  }

  private static int digit(byte b) {
    int d = b - '0';
    return d <= 9 ? d : -1;
  }

  /**
   * The number times {@code 10^places}, to the nearest whole (halves away from zero), or {@link
   * #OUT_OF_RANGE}.
   */
  long toNanos(int places) {
    int power = exponent + places;
    if (significand == 0) {
      return 0;
    }
    long n;
    if (power > 0) {
      if (anyDropped || power > 18 || significand > MOST[power]) {
        return OUT_OF_RANGE;
      }
      n = significand * TENS[power];
    } else if (power == 0) {
      n = significand + (firstDroppedRounds ? 1 : 0);
    } else {
      n = power < -18 ? (power == -19 && significand >= 5 * TENS[18] ? 1 : 0) : rounded(-power);
    }
    return n < 0 ? OUT_OF_RANGE : negative ? -n : n;
  }

  private long rounded(int places) {
    long divisor = TENS[places];
    long n = significand / divisor;
    return significand % divisor >= divisor / 2 ? n + 1 : n;
  }

  /**
   * The nearest double, ties to even; infinite if the number is too large for one.
   *
   * @param bytes the bytes that were parsed
   */
  double toDouble(byte[] bytes, int from, int to, byte mark) {
    double v = NearestDouble.of(significand, exponent);
    if (anyDropped && v != NearestDouble.of(significand + 1, exponent)) {
      String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
      return Double.parseDouble(text.replace((char) mark, '.'));
    }
    return negative ? -v : v;
  }
}
