package tripline.link;

import java.nio.charset.StandardCharsets;

/** Reads the strings at the end of a body, one after another. */
final class BodyStrings {
  private final byte[] body;
  private int at;

  BodyStrings(byte[] body, int at) {
    this.body = body;
    this.at = at;
  }

  String next() {
    int length = Le.u8(body, at);
    String text = new String(body, at + 1, length, StandardCharsets.UTF_8);
    at += 1 + length;
    return text;
  }
}
