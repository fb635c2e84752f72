package tripline.harness.summary;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
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

  private int format;
  private @Nullable String tag;
  private @Nullable Decision decision;
  private @Nullable Instant started;
  private @Nullable JsonNode ends;
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
   * @throws MalformedJson if it is no JSON as far as it had to be read
   */
  static Optional<ResultLine> of(byte[] bytes, int length, String file, Instant written)
      throws MalformedJson {
    ResultScan scan = new ResultScan();
    TopLevel.split(bytes, length, (key, from, to) -> scan.read(key, bytes, from, to));
    return scan.line(file, written);
  }

  private void read(String key, byte[] bytes, int from, int to) throws MalformedJson {
    try {
      switch (key) {
        case "format" -> format = tree(bytes, from, to).asInt();
        case "decision" -> decision = decision(tree(bytes, from, to).asText());
        case "job" -> {
          JsonNode name = tree(bytes, from, to).path("tag");
          tag = name.isTextual() ? name.textValue() : null;
        }
        case "recordings" -> started(bytes, from, to);
        case "ends" -> ends = tree(bytes, from, to);
        case "findings" -> findings(tree(bytes, from, to));
        default -> {
          // Of no use to a summary.
        }
      }
    } catch (JsonProcessingException e) {
      throw new MalformedJson(from + (int) Math.max(0, e.getLocation().getByteOffset()));
    } catch (IOException e) {
      throw new UncheckedIOException("bytes in memory", e);
    }
  }

  private static JsonNode tree(byte[] bytes, int from, int to) throws IOException {
    return MAPPER.readTree(bytes, from, to - from);
  }

  private static @Nullable Decision decision(String word) {
    return switch (word) {
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

  private Optional<ResultLine> line(String file, Instant written) {
    if (format != FORMAT || tag == null || decision == null || ends == null) {
      return Optional.empty();
    }
    JsonNode closed = ends.path("closed");
    JsonNode open = ends.path("open");
    return Optional.of(
        new ResultLine(
            tag,
            file,
            started == null ? written : started,
            decision,
            figure(closed.path("backoff")),
            figure(open.path("backoff")),
            figure(closed.path("margin")),
            figure(open.path("margin")),
            faults,
            cautions,
            worst));
  }

  private static @Nullable Figure figure(JsonNode node) {
    JsonNode value = node.path("value");
    return value.isNumber() ? new Figure(value.doubleValue(), node.path("u").asDouble(0)) : null;
  }
}
