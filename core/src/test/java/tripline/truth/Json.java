package tripline.truth;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Just enough JSON (RFC 8259) to write truth down: objects, lists, texts, numbers to a millionth,
 * null.
 */
public final class Json {
  private final StringBuilder out = new StringBuilder();

  private Json() {}

  /** Keys and values in turn, kept in order. */
  public static Map<String, Object> object(Object... keysAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      map.put((String) keysAndValues[i], keysAndValues[i + 1]);
    }
    return map;
  }

  /** Pretty text of nested maps, lists and values; innermost containers stand on one line. */
  public static String text(Object value) {
    Json json = new Json();
    json.write(value, 0);
    return json.out.append('\n').toString();
  }

  private void write(Object value, int depth) {
    if (value instanceof Map<?, ?> map) {
      boolean flat = map.values().stream().noneMatch(Json::nested);
      open('{', flat, depth);
      String between = "";
      for (Map.Entry<?, ?> e : map.entrySet()) {
        out.append(between);
        between = separator(flat, depth);
        quoted((String) e.getKey());
        out.append(": ");
        write(e.getValue(), depth + 1);
      }
      close('}', flat, depth);
    } else if (value instanceof List<?> list) {
      boolean flat = list.stream().noneMatch(Json::nested);
      open('[', flat, depth);
      String between = "";
      for (Object e : list) {
        out.append(between);
        between = separator(flat, depth);
        write(e, depth + 1);
      }
      close(']', flat, depth);
    } else if (value instanceof String text) {
      quoted(text);
    } else if (value instanceof Double number) {
      out.append(number(number));
    } else {
      out.append(value);
    }
  }

  private static boolean nested(Object value) {
    return value instanceof Map || value instanceof List;
  }

  private void open(char bracket, boolean flat, int depth) {
    out.append(bracket).append(flat ? "" : "\n" + "  ".repeat(depth + 1));
  }

  private void close(char bracket, boolean flat, int depth) {
    out.append(flat ? "" : "\n" + "  ".repeat(depth)).append(bracket);
  }

  private static String separator(boolean flat, int depth) {
    return flat ? ", " : ",\n" + "  ".repeat(depth + 1);
  }

  private static String number(double value) {
    if (Double.isNaN(value)) {
      return "null";
    }
    BigDecimal rounded = new BigDecimal(value).setScale(6, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private void quoted(String text) {
    out.append('"').append(text.replace("\\", "\\\\").replace("\"", "\\\"")).append('"');
  }
}
