package tripline.harness.report;

/**
 * Text from sheets, recordings and result files made harmless for a screen or a record.
 *
 * <p>Whatever could steer a terminal or turn a line around becomes a visible mark: control
 * characters, line and paragraph separators, the invisible format characters (direction overrides
 * and isolates, zero-width marks), private and unassigned code points, halves of surrogate pairs.
 * Of combining marks on one letter two are kept.
 */
public final class SafeText {
  /** Stands for a character that was taken out. */
  public static final int MARK = 0xFFFD;

  private static final int MARKS_ON_A_LETTER = 2;

  private SafeText() {}

  /** One harmless line of the text. */
  public static String line(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    int combining = 0;
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      combining = isCombining(c) ? combining + 1 : 0;
      if (combining <= MARKS_ON_A_LETTER) {
        safe.appendCodePoint(c == '\t' || c == 0xA0 ? ' ' : isSafe(c) ? c : MARK);
      }
    }
    return safe.toString();
  }

  /** As {@link #line}, in printable ASCII only; a question mark stands for anything else. */
  public static String ascii(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    line(text)
        .codePoints()
        .filter(c -> !isCombining(c))
        .forEach(c -> safe.append(c < 0x7F ? Character.toString(c) : ascii(c)));
    return safe.toString();
  }

  private static String ascii(int c) {
    return switch (c) {
      case 0xB0 -> " deg";
      case 0xB1 -> "+-";
      case 0xD7 -> "x";
      case 0x2010, 0x2011, 0x2012, 0x2013, 0x2014, 0x2212 -> "-";
      case 0x2018, 0x2019 -> "'";
      case 0x201C, 0x201D -> "\"";
      case 0x2026 -> "...";
      case 0x2264 -> "<=";
      case 0x2265 -> ">=";
      default -> "?";
    };
  }

  private static boolean isSafe(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  static boolean isCombining(int c) {
    int type = Character.getType(c);
    return type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK;
  }
}
