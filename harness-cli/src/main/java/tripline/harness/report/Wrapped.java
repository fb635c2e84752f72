package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;

/** Running text broken at spaces, never between a figure and its per cent sign. */
public final class Wrapped {
  private Wrapped() {}

  /**
   * Lines of at most so many characters; a longer word stays whole.
   *
   * @param text its leading spaces are kept
   * @param width columns
   * @param indent what every line but the first begins with
   */
  public static List<String> lines(String text, int width, String indent) {
    List<String> lines = new ArrayList<>();
    String rest = text;
    while (rest.length() > width) {
      int margin = rest.length() - rest.stripLeading().length();
      int at = rest.lastIndexOf(' ', width);
      while (at > margin && rest.startsWith(" %", at)) {
        at = rest.lastIndexOf(' ', at - 1);
      }
      if (at <= margin) {
        at = rest.indexOf(' ', width);
      }
      if (at < 0) {
        break;
      }
      lines.add(rest.substring(0, at).stripTrailing());
      rest = indent + rest.substring(at + 1).stripLeading();
    }
    lines.add(rest.stripTrailing());
    return lines;
  }
}
