package tripline.harness.summary;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;

/** Reads the few keys of a result file that a summary needs, and skips the rest unread. */
final class ResultScan {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** The result file's format that this reads; see the contract. */
  private static final int FORMAT = 1;

  private @Nullable Integer format;
  private @Nullable String tag;
  private @Nullable Decision decision;
  private @Nullable Instant started;
  private boolean adjusted;
  private boolean ends;
  private EndLine closed = EndLine.NONE;
  private EndLine open = EndLine.NONE;
  private int faults;
  private int cautions;
  private @Nullable String worst;
  private int gravest;

  private ResultScan() {}

  /**
   * A result, or nothing if the file holds something else.
   *
   * @param bytes the file
   * @param length how many of the bytes are the file's
   * @param file its name for the line
   * @param written when the file was last written
   * @throws UnusableResult if it is no JSON as far as it had to be read
   */
  static Optional<ResultLine> of(byte[] bytes, int length, String file, Instant written)
      throws UnusableResult {
    ResultScan scan = new ResultScan();
    TopLevel.split(bytes, length, (key, from, to) -> scan.read(key, bytes, from, to));
    return scan.line(file, written);
  }

  private void read(String key, byte[] bytes, int from, int to) throws UnusableResult {
    try {
      switch (key) {
        case "format" -> format = format(tree(bytes, from, to));
        case "decision" -> decision = decision(tree(bytes, from, to));
        case "job" -> {
          JsonNode name = tree(bytes, from, to).path("tag");
          tag = name.isTextual() ? name.textValue() : null;
        }
        case "recordings" -> started(bytes, from, to);
        case "settings" -> settings(tree(bytes, from, to));
        case "ends" -> ends(tree(bytes, from, to), from);
        case "findings" -> findings(tree(bytes, from, to));
        default -> {
          // Of no use to a summary.
        }
      }
    } catch (StreamConstraintsException e) {
      throw new UnusableResult(from, "'" + key + "' holds what no result does: too long or deep");
    } catch (JsonProcessingException e) {
      throw new UnusableResult(from + (int) Math.max(0, e.getLocation().getByteOffset()));
    } catch (IOException e) {
      throw new UncheckedIOException("bytes in memory", e);
    }
  }

  private static JsonNode tree(byte[] bytes, int from, int to) throws IOException {
    return MAPPER.readTree(bytes, from, to - from);
  }

  private static @Nullable Integer format(JsonNode node) {
    return node.isInt() ? node.intValue() : null;
  }

  private static @Nullable Decision decision(JsonNode word) {
    return switch (word.asText()) {
      case "accept" -> Decision.ACCEPT;
      case "reject" -> Decision.REJECT;
      case "undecided" -> Decision.UNDECIDED;
      default -> null;
    };
  }

  /** When the first of them began. */
  private void started(byte[] bytes, int from, int to) throws IOException {
    try (JsonParser json = MAPPER.createParser(bytes, from, to - from)) {
      if (json.nextToken() != JsonToken.START_ARRAY || json.nextToken() != JsonToken.START_OBJECT) {
        return;
      }
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        String key = json.currentName();
        if (json.nextToken() == JsonToken.VALUE_STRING && key.equals("started")) {
          started = instant(json.getText());
          return;
        }
        json.skipChildren();
      }
    }
  }

  private static @Nullable Instant instant(String text) {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      // A clock that nobody set: the file's own time stands in.
      return null;
    }
  }

  private void findings(JsonNode findings) {
    for (JsonNode finding : findings) {
      String severity = finding.path("severity").asText().toLowerCase(Locale.ROOT);
      int grave = severity.equals("fault") ? 3 : severity.equals("caution") ? 2 : 1;
      faults += grave == 3 ? 1 : 0;
      cautions += grave == 2 ? 1 : 0;
      if (grave > gravest) {
        gravest = grave;
        worst = finding.path("code").asText();
      }
    }
  }

  private void settings(JsonNode settings) {
    for (JsonNode setting : settings) {
      adjusted |= setting.path("judged").isBoolean() && !setting.path("judged").booleanValue();
    }
  }

  private void ends(JsonNode node, int from) throws UnusableResult {
    ends = node.isObject();
    closed = EndLines.of(node, "closed", from);
    open = EndLines.of(node, "open", from);
  }

  private Optional<ResultLine> line(String file, Instant written) throws UnusableResult {
    if (format == null || tag == null || !ends) {
      return Optional.empty();
    }
    if (format != FORMAT) {
      throw new UnusableResult(0, "is a result of format " + format + ", expected " + FORMAT);
    }
    if (decision == null) {
      throw new UnusableResult(0, "has no decision, expected accept, reject or undecided");
    }
    return Optional.of(
        new ResultLine(
            tag,
            file,
            started == null ? written : started,
            written,
            decision,
            adjusted,
            closed,
            open,
            faults,
            cautions,
            worst));
  }
}
