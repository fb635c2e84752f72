package tripline.capture;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Strings of a body: a byte of length, then UTF-8. */
final class Strings {
  private static final int MOST = 255;

  private Strings() {}

  /** Writes a string, cut at a character where it is too long; where the next one goes. */
  static int put(byte[] body, int at, String text) {
    byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
    int length = Math.min(utf8.length, MOST);
    while (length < utf8.length && length > 0 && (utf8[length] & 0xc0) == 0x80) {
      length--;
    }
    body[at] = (byte) length;
    System.arraycopy(utf8, 0, body, at + 1, length);
    return at + 1 + length;
  }

  /** Whether so many strings lie between here and the end. */
  static boolean hold(byte[] body, int from, int length, int count) {
    int at = from;
    for (int i = 0; i < count; i++) {
      if (at >= length) {
        return false;
      }
      at += 1 + (body[at] & 0xff);
    }
    return at <= length;
  }

  /** The string that stands at this place among those from here; malformed bytes become U+FFFD. */
  static String get(byte[] body, int from, int place) {
    int at = from;
    for (int i = 0; i < place; i++) {
      at += 1 + (body[at] & 0xff);
    }
    int end = at + 1 + (body[at] & 0xff);
    return new String(Arrays.copyOfRange(body, at + 1, end), StandardCharsets.UTF_8);
  }
}
