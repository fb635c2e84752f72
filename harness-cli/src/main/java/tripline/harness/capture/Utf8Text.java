package tripline.harness.capture;

import java.nio.charset.StandardCharsets;

/** Text within so many bytes of UTF-8. */
public final class Utf8Text {
  private Utf8Text() {}

  /** As much of the text as fits, whole characters only and none of them a control character. */
  public static String cut(String text, int bytes) {
    StringBuilder cut = new StringBuilder();
    int used = 0;
    for (int c : text.codePoints().filter(c -> !Character.isISOControl(c)).toArray()) {
      String one = Character.toString(c);
      used += one.getBytes(StandardCharsets.UTF_8).length;
      if (used > bytes) {
        break;
      }
      cut.append(one);
    }
    return cut.toString();
  }
}
