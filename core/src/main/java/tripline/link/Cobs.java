package tripline.link;

/**
 * Consistent Overhead Byte Stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2),
 * 1999): rewrites bytes so that none is zero. SPEC §2.
 */
public final class Cobs {
  private static final int FULL = 0xff;

  private Cobs() {}

  /** Most bytes that {@code length} bytes become. */
  public static int longest(int length) {
    return length + length / (FULL - 1) + 1;
  }

  /**
   * Stuffs {@code length} bytes of {@code data} into {@code out} at {@code at}, without delimiter.
   *
   * @return bytes written, at most {@link #longest}
   */
  public static int encode(byte[] data, int length, byte[] out, int at) {
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
   * Undoes the stuffing of {@code [from, to)}, at least one byte and none of them zero: copies
   * everything behind the first code and turns each further code into the zero it stands for.
   *
   * @param out with room for {@code to - from} bytes
   * @return bytes of data at the start of {@code out}, or -1 if a code reaches beyond the end
   */
  public static int decode(byte[] wire, int from, int to, byte[] out) {
    int origin = from + 1;
    System.arraycopy(wire, origin, out, 0, to - origin);
    int at = from;
    while (true) {
      int code = wire[at] & 0xff;
      int next = at + code;
      if (next >= to) {
        return next == to ? to - origin : -1;
      }
      if (code == FULL) {
        origin++;
        System.arraycopy(wire, next + 1, out, next + 1 - origin, to - next - 1);
      } else {
        out[next - origin] = 0;
      }
      at = next;
    }
  }
}
