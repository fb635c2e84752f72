package tripline.harness.jobfile;

import java.math.BigDecimal;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Values of a sheet as messages show them: on one line, never long. */
final class Values {
  private static final int LONGEST = 40;

  private Values() {}

  static String shown(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.isNaN(value) ? "nan" : value > 0 ? "inf" : "-inf";
    }
    BigDecimal plain = BigDecimal.valueOf(value).stripTrailingZeros();
    boolean wide = plain.scale() > 12 || plain.precision() - plain.scale() > 12;
    return wide ? plain.toString() : plain.toPlainString();
  }

  /** A text in quotes, control characters escaped, its end cut off where it is long. */
  static String quoted(String text) {
    StringBuilder shown = new StringBuilder("\"");
    int[] points = text.codePoints().limit(LONGEST + 1L).toArray();
    for (int i = 0; i < Math.min(points.length, LONGEST); i++) {
      if (points[i] == '\t') {
        shown.append("\\t");
      } else if (Character.isISOControl(points[i])) {
        shown.append("\\u%04x".formatted(points[i]));
      } else {
        shown.appendCodePoint(points[i]);
      }
    }
    return shown.append(points.length > LONGEST ? "...\"" : "\"").toString();
  }

  /** What a value is, and which. */
  static String described(Object value) {
    if (value instanceof String text) {
      return "the text " + quoted(text);
    }
    if (value instanceof Boolean) {
      return "the boolean " + value;
    }
    if (value instanceof Long) {
      return "the number " + value;
    }
    if (value instanceof Double number) {
      return "the number " + shown(number);
    }
    if (value instanceof TomlTable) {
      return "a table";
    }
    if (value instanceof TomlArray array) {
      return array.isEmpty() ? "an empty list" : "a list";
    }
    return "a date or time";
  }
}
