package tripline.link;

/** Strings on the link: well-formed UTF-8 (RFC 3629) without control characters. */
final class Utf8 {
  private Utf8() {}

  /** Whether {@code [from, to)} is well-formed and holds no U+0000-001F, U+007F-009F. */
  static boolean plain(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to) {
      int first = bytes[at] & 0xff;
      if (first < 0x80) {
        if (first < 0x20 || first == 0x7f) {
          return false;
        }
        at++;
        continue;
      }
      int more = first >= 0xc2 && first < 0xe0 ? 1 : first >= 0xe0 && first < 0xf0 ? 2 : 3;
      if (first < 0xc2 || first > 0xf4 || to - at <= more) {
        return false;
      }
      int second = bytes[at + 1] & 0xff;
      if (second < lowestSecond(first) || second > highestSecond(first)) {
        return false;
      }
      for (int i = 2; i <= more; i++) {
        if ((bytes[at + i] & 0xc0) != 0x80) {
          return false;
        }
      }
      at += 1 + more;
    }
    return true;
  }

  /** C2 80-9F are control characters; E0 and F0 with less would be overlong. */
  private static int lowestSecond(int first) {
    return switch (first) {
      case 0xc2, 0xe0 -> 0xa0;
      case 0xf0 -> 0x90;
      default -> 0x80;
    };
  }

  /** ED beyond is a surrogate, F4 beyond lies outside Unicode. */
  private static int highestSecond(int first) {
    return switch (first) {
      case 0xed -> 0x9f;
      case 0xf4 -> 0x8f;
      default -> 0xbf;
    };
  }
}
