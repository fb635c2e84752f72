package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Running text broken at spaces, never between a figure and its per cent sign. */
public final class Wrapped {
  /** No space before a per cent sign: a figure keeps its own. */
  private static final Pattern SPACE = Pattern.compile(" (?!%)");

  private Wrapped() {}

  /**
   * Lines of at most so many columns; a longer word stays whole, so that it can be copied.
   *
   * @param text its leading spaces, and those between words, are kept
   * @param columns of the screen, as {@link Columns#width} counts them
   * @param indent what every line but the first begins with
   */
  public static List<String> lines(String text, int columns, String indent) {
    List<String> lines = new ArrayList<>();
    int margin = text.length() - text.stripLeading().length();
    StringBuilder line = new StringBuilder(text.substring(0, margin));
    boolean begun = false;
    for (String word : SPACE.split(text.substring(margin), -1)) {
      if (begun && Columns.width(line.toString()) + 1 + Columns.width(word) > columns) {
        lines.add(line.toString().stripTrailing());
        line.setLength(0);
        line.append(indent);
        begun = false;
      }
      line.append(begun ? " " : "").append(word);
      begun = begun || !word.isEmpty();
    }
    lines.add(line.toString().stripTrailing());
    return lines;
  }
}
