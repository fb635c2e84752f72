package tripline.csv;

import java.math.BigInteger;

/**
 * The double nearest to a decimal number, ties to even, without allocation for the numbers that
 * measuring instruments write.
 *
 * <p>Small numbers by one exact operation (Clinger 1990, "How to read floating point numbers
 * accurately"); the others by the 128-bit product of Lemire 2021, "Number parsing at a gigabyte per
 * second", Software: Practice and Experience 51(8), clause 5; what lies outside of its table by
 * {@link Double#parseDouble}. Proven equal to the latter in the tests.
 */
final class NearestDouble {
  private static final long EXACT = 1L << 53;
  private static final int MOST_EXACT_POWER = 22;
  private static final double[] TENS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  private NearestDouble() {}

  /** 10 to the power {@code n}, 0 to 22, exact. */
  static double ten(int n) {
    return TENS[n];
  }

  /** {@code significand * 10^exponent}, the significand not negative. */
  static double of(long significand, int exponent) {
    if (significand <= EXACT && exponent <= 0 && exponent >= -MOST_EXACT_POWER) {
      return significand / TENS[-exponent];
    }
    if (significand <= EXACT && exponent > 0 && exponent <= MOST_EXACT_POWER) {
      return significand * TENS[exponent];
    }
    if (significand == 0) {
      return 0.0;
    }
    if (significand > 0 && Math.abs(exponent) <= Fives.MOST) {
      return product(significand, exponent);
    }
    return Double.parseDouble(Long.toUnsignedString(significand) + "e" + exponent);
  }

  private static double product(long significand, int exponent) {
    int shift = Long.numberOfLeadingZeros(significand);
    long w = significand << shift;
    long five = Fives.HIGH[exponent + Fives.MOST];
    long high = unsignedHigh(w, five);
    long low = w * five;
    if ((high & 0x1FF) == 0x1FF) {
      long more = unsignedHigh(w, Fives.LOW[exponent + Fives.MOST]);
      low += more;
      if (Long.compareUnsigned(low, more) < 0) {
        high++;
      }
    }
    int top = (int) (high >>> 63);
    long mantissa = high >>> (top + 9);
    int binary = ((217706 * exponent) >> 16) + 1024 + 63 - shift - (1 - top);
    boolean halfway =
        Long.compareUnsigned(low, 1) <= 0
            && exponent >= -4
            && exponent <= 23
            && (mantissa & 3) == 1
            && mantissa << (top + 9) == high;
    if (halfway) {
      mantissa &= ~1L;
    }
    mantissa += mantissa & 1;
    mantissa >>>= 1;
    if (mantissa >= EXACT) {
      mantissa = EXACT >> 1;
      binary++;
    }
    return Double.longBitsToDouble((mantissa & ~(EXACT >> 1)) | ((long) binary << 52));
  }

  private static long unsignedHigh(long a, long b) {
    return Math.multiplyHigh(a, b) + ((a >> 63) & b) + ((b >> 63) & a);
  }

  /** Powers of five, each scaled by a power of two to 128 bits; made on first use. */
  private static final class Fives {
    static final int MOST = 64;
    private static final int LAST_IN_64_BITS = 27;
    static final long[] HIGH = new long[2 * MOST + 1];
    static final long[] LOW = new long[2 * MOST + 1];

    static {
      for (int e = -MOST; e <= MOST; e++) {
        BigInteger scaled = scaled(e);
        HIGH[e + MOST] = scaled.shiftRight(64).longValue();
        LOW[e + MOST] = scaled.longValue();
      }
    }

    /**
     * Truncated for positive powers; for negative ones the reciprocal, rounded up in its last bit
     * as long as five to that power fits 64 bits (so that exact halves are seen), truncated beyond.
     */
    private static BigInteger scaled(int e) {
      BigInteger five = BigInteger.valueOf(5).pow(Math.abs(e));
      if (e >= 0) {
        return fit(five);
      }
      int bits = e >= -LAST_IN_64_BITS ? five.bitLength() + 127 : 2 * five.bitLength() + 128;
      return fit(BigInteger.ONE.shiftLeft(bits).divide(five).add(BigInteger.ONE));
    }

    private static BigInteger fit(BigInteger n) {
      int excess = n.bitLength() - 128;
      return excess >= 0 ? n.shiftRight(excess) : n.shiftLeft(-excess);
    }
  }
}
