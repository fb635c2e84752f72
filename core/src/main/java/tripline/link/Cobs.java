package tripline.link;

/**
 * Consistent Overhead Byte Stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2),
 * 1999): rewrites bytes so that none is zero. SPEC §2.
 */
final class Cobs {
  private static final int FULL = 0xff;

  private Cobs() {}

  /** Most bytes that {@code length} bytes become. */
  static int longest(int length) {
    return length + length / (FULL - 1) + 1;
  }

  /**
   * Stuffs {@code length} bytes of {@code data} into {@code out} at {@code at}, without delimiter.
   *
   * @return bytes written, at most {@link #longest}
   */
  static int encode(byte[] data, int length, byte[] out, int at) {
    int codeAt = at;
    int to = at + 1;
    int code = 1;
    for (int i = 0; i < length; i++) {
      byte b = data[i];
      if (b != 0) {
        out[to++] = b;
        code++;
      }
      if (b == 0 || (code == FULL && i + 1 < length)) {
        out[codeAt] = (byte) code;
        codeAt = to++;
        code = 1;
      }
    }
    out[codeAt] = (byte) code;
    return to - at;
  }

  /**
   * Undoes the stuffing of {@code [from, to)}, which holds no zero byte.
   *
   * @return bytes written at the start of {@code out}, or -1 if a code reaches beyond the end
   */
  static int decode(byte[] wire, int from, int to, byte[] out) {
    int at = from;
    int written = 0;
    while (at < to) {
      int code = wire[at] & 0xff;
      int next = at + code;
      if (next > to) {
        return -1;
      }
      if (code < 24) {
        for (int i = at + 1; i < next; i++) {
          out[written++] = wire[i];
        }
      } else {
        System.arraycopy(wire, at + 1, out, written, code - 1);
        written += code - 1;
      }
      at = next;
      if (code != FULL && at < to) {
        out[written++] = 0;
      }
    }
    return written;
  }
}
