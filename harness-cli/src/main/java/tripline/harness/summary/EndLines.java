package tripline.harness.summary;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;

/** Reads an end's figures, and takes none that is not a number of turns. */
final class EndLines {
  private EndLines() {}

  /**
   * One end; what is absent or null is null.
   *
   * @param ends the member of that name of a result
   * @param key {@code closed} or {@code open}
   * @param at where the member begins, for the error
   * @throws UnusableResult if a figure is no number, too large for one, or its uncertainty negative
   */
  static EndLine of(JsonNode ends, String key, int at) throws UnusableResult {
    JsonNode end = ends.path(key);
    JsonNode backoff = end.path("backoff");
    return new EndLine(
        figure(backoff, key + " backoff", at),
        number(backoff.path("target"), key + " target", at),
        backoff.path("decision").asText().equals("reject"),
        figure(end.path("margin"), key + " margin", at));
  }

  private static @Nullable Figure figure(JsonNode node, String what, int at) throws UnusableResult {
    Double value = number(node.path("value"), what, at);
    if (value == null) {
      return null;
    }
    Double u = number(node.path("u"), what + "'s u", at);
    if (u != null && u < 0) {
      throw new UnusableResult(at, what + "'s u is negative, expected 0 or more");
    }
    return new Figure(value, u == null ? 0 : u);
  }

  private static @Nullable Double number(JsonNode node, String what, int at) throws UnusableResult {
    if (node.isMissingNode() || node.isNull()) {
      return null;
    }
    if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
      throw new UnusableResult(at, what + " is no number of turns, expected one or null");
    }
    return node.doubleValue();
  }
}
