package tripline.harness.report;

import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.List;

/** Text measured in the columns a terminal gives it. */
public final class Columns {
  private Columns() {}

  /** Columns a text takes: two for a wide East Asian character, none for a combining mark. */
  public static int width(String text) {
    return text.codePoints().map(Columns::width).sum();
  }

  private static int width(int c) {
    if (c < 0x300) {
      return 1;
    }
    return SafeText.isCombining(c) ? 0 : isWide(c) ? 2 : 1;
  }

  /** Scripts and blocks that UAX #11 gives two columns (from memory, whole blocks). */
  private static boolean isWide(int c) {
    if ((c >= 0xFF01 && c <= 0xFF60)
        || (c >= 0x3000 && c <= 0x303E)
        || (c >= 0x1F300 && c <= 0x1FAFF)) {
      return true;
    }
    return switch (UnicodeScript.of(c)) {
      case HAN, HIRAGANA, KATAKANA, HANGUL, BOPOMOFO, YI -> !(c >= 0xFF61 && c <= 0xFFDC);
      default -> false;
    };
  }

  /** A text cut (and marked with the glyph given) or filled up to exactly so many columns. */
  public static String fit(String text, int columns, String cut) {
    int width = width(text);
    if (width <= columns) {
      return text + " ".repeat(columns - width);
    }
    String head = head(text, columns - width(cut)) + cut;
    return head + " ".repeat(columns - width(head));
  }

  private static String head(String text, int columns) {
    int used = 0;
    int i = 0;
    while (i < text.length()) {
      int c = text.codePointAt(i);
      if (used + width(c) > columns) {
        break;
      }
      used += width(c);
      i += Character.charCount(c);
    }
    return text.substring(0, i);
  }

  /** Running text in lines of at most so many columns; a longer word is broken. */
  public static List<String> wrap(String text, int columns) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      String rest = word;
      if (line.length() > 0 && width(line.toString()) + 1 + width(rest) > columns) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (width(rest) > columns) {
        String head = head(rest, columns);
        lines.add(head);
        rest = rest.substring(head.length());
      }
      line.append(line.length() > 0 ? " " : "").append(rest);
    }
    lines.add(line.toString());
    return lines;
  }
}
