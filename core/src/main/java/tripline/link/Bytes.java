package tripline.link;

/** Looks for zero bytes eight at a time. */
final class Bytes {
  private static final long ONES = 0x0101_0101_0101_0101L;
  private static final long TOPS = 0x8080_8080_8080_8080L;

  private Bytes() {}

  /** Index of the first zero in {@code [from, to)}, or -1. */
  static int indexOfZero(byte[] bytes, int from, int to) {
    int at = from;
    for (; at + Long.BYTES <= to; at += Long.BYTES) {
      long word = Le.i64(bytes, at);
      long zeros = (word - ONES) & ~word & TOPS;
      if (zeros != 0) {
        return at + (Long.numberOfTrailingZeros(zeros) >> 3);
      }
    }
    for (; at < to; at++) {
      if (bytes[at] == 0) {
        return at;
      }
    }
    return -1;
  }
}
