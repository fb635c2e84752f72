package tripline.harness.report.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tripline.harness.report.SafeText;

/**
 * An element of a drawing. The only place where text becomes markup, and so the one that escapes.
 */
final class Element {
  private final String name;
  private final Map<String, String> attributes = new LinkedHashMap<>();
  private final List<Element> children = new ArrayList<>();
  private String text = "";

  Element(String name) {
    this.name = name;
  }

  Element add(String childName) {
    Element child = new Element(childName);
    children.add(child);
    return child;
  }

  Element set(String attribute, String value) {
    attributes.put(attribute, SafeText.line(value));
    return this;
  }

  Element set(String attribute, double value) {
    return set(attribute, number(value));
  }

  /** A figure that the mark stands for, unrounded. */
  Element data(String key, double value) {
    return set("data-" + key, Double.toString(value));
  }

  Element data(String key, String value) {
    return set("data-" + key, value);
  }

  Element fill(String colour) {
    return set("fill", colour);
  }

  Element stroke(String colour, double width) {
    return set("stroke", colour).set("stroke-width", width);
  }

  Element dashed(String pattern) {
    return set("stroke-dasharray", pattern);
  }

  Element text(String content) {
    text = SafeText.line(content);
    return this;
  }

  /** Coordinates to a hundredth of a unit. */
  static String number(double value) {
    return new BigDecimal(value)
        .setScale(2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  void write(StringBuilder out) {
    out.append('<').append(name);
    attributes.forEach(
        (k, v) -> out.append(' ').append(k).append("=\"").append(escaped(v)).append('"'));
    if (children.isEmpty() && text.isEmpty()) {
      out.append("/>");
      return;
    }
    out.append('>').append(escaped(text));
    children.forEach(c -> c.write(out));
    out.append("</").append(name).append('>');
  }

  private static String escaped(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(c);
      }
    }
    return out.toString();
  }
}
