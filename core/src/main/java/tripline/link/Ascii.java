package tripline.link;

/** Text of lines as bytes. */
final class Ascii {
  private static final byte[] HEX = {
    '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f'
  };

  private Ascii() {}

  static boolean equal(byte[] bytes, int from, int to, String text) {
    if (to - from != text.length()) {
      return false;
    }
    for (int i = 0; i < text.length(); i++) {
      if (bytes[from + i] != text.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** Value of a hexadecimal digit in either case, or -1. */
  static int hexDigit(int c) {
    return c >= '0' && c <= '9'
        ? c - '0'
        : c >= 'a' && c <= 'f' ? c - 'a' + 10 : c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
  }

  static int put(byte[] out, int at, String text) {
    int to = at;
    for (int i = 0; i < text.length(); i++) {
      out[to++] = (byte) text.charAt(i);
    }
    return to;
  }

  /** Writes a number in decimal. */
  static int putDecimal(byte[] out, int at, long value) {
    int to = at;
    long rest = value;
    if (rest < 0) {
      out[to++] = '-';
      rest = -rest;
    }
    int digits = 1;
    for (long power = 10; digits < 19 && rest >= power; power *= 10) {
      digits++;
    }
    for (int i = digits - 1; i >= 0; i--) {
      out[to + i] = (byte) ('0' + rest % 10);
      rest /= 10;
    }
    return to + digits;
  }

  /** Writes a number in hexadecimal with at least {@code fewest} digits. */
  static int putHex(byte[] out, int at, long value, int fewest) {
    int digits = Math.max(fewest, (67 - Long.numberOfLeadingZeros(value)) / 4);
    for (int i = 0; i < digits; i++) {
      out[at + i] = HEX[(int) (value >>> (4 * (digits - 1 - i))) & 15];
    }
    return at + digits;
  }
}
