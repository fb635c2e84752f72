package tripline.harness.report.drawing;

import java.util.Locale;
import tripline.harness.report.SafeText;

/** A drawing under way, with its text alternative. */
final class Svg {
  /** Units across every drawing. */
  static final double WIDTH = 360;

  /** Width of an average character in units of its size, on the wide side for sans-serif faces. */
  private static final double CHARACTER = 0.58;

  private final Element root = new Element("svg");

  /**
   * @param id unique within the record
   * @param title name of the drawing
   * @param description what it shows, figures included: all that somebody needs who cannot see it
   */
  Svg(String id, double height, String title, String description) {
    String box = "0 0 " + Element.number(WIDTH) + " " + Element.number(height);
    root.set("xmlns", "http://www.w3.org/2000/svg")
        .set("viewBox", box)
        .set("width", WIDTH)
        .set("height", height)
        .set("role", "img")
        .set("aria-labelledby", id + "-t " + id + "-d")
        .set("font-family", "Record, sans-serif");
    root.add("title").set("id", id + "-t").text(title);
    root.add("desc").set("id", id + "-d").text(description);
  }

  Element line(double x1, double y1, double x2, double y2) {
    return root.add("line").set("x1", x1).set("y1", y1).set("x2", x2).set("y2", y2);
  }

  Element rect(double x, double y, double width, double height) {
    return root.add("rect")
        .set("x", x)
        .set("y", y)
        .set("width", Math.max(0, width))
        .set("height", height);
  }

  Element circle(double x, double y, double radius) {
    return root.add("circle").set("cx", x).set("cy", y).set("r", radius);
  }

  Element path(String outline) {
    return root.add("path").set("d", outline);
  }

  /** Text that starts, ends or is centred ({@code start}, {@code end}, {@code middle}) at x. */
  Element text(double x, double y, String anchor, double size, String content) {
    return root.add("text")
        .set("x", x)
        .set("y", y)
        .set("text-anchor", anchor)
        .set("font-size", size)
        .fill(Palette.INK)
        .text(content);
  }

  /** Text centred at x, or as near to it as keeps it inside the drawing. */
  Element textAbout(double x, double y, double size, String content) {
    double half = content.length() * size * CHARACTER / 2;
    return text(Math.min(Math.max(x, half), WIDTH - half), y, "middle", size, content);
  }

  /** A text cut to a width it is sure to fit in. */
  static String fitted(String text, double width, double size) {
    String safe = SafeText.line(text);
    int most = Math.max(1, (int) (width / (size * CHARACTER)));
    int count = safe.codePointCount(0, safe.length());
    return count <= most ? safe : safe.substring(0, safe.offsetByCodePoints(0, most - 1)) + "…";
  }

  static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }

  @Override
  public String toString() {
    StringBuilder out = new StringBuilder();
    root.write(out);
    return out.toString();
  }
}
