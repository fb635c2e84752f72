package tripline.harness.report;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.harness.failure.InputFailure;
import tripline.job.Direction;
import tripline.sample.ContactState;
import tripline.travel.Reference;

/** What a result file brings to a later analysis of the same actuator. */
public final class ReferenceFile {
  /** A result of a thousand strokes is smaller. */
  private static final long MOST_BYTES = 64L << 20;

  private final String file;

  private ReferenceFile(String file) {
    this.file = file;
  }

  /**
   * Reads the hard stops and the judged setting's changes of a result file.
   *
   * @param tag plant tag of the valve at hand; a result of another one is refused
   * @throws InputFailure if the file is no result, or one of another valve
   */
  public static Reference read(Path path, String tag) {
    return new ReferenceFile(path.toString()).reference(path, tag);
  }

  private Reference reference(Path path, String tag) {
    JsonNode root = tree(path);
    if (!root.isObject() || !root.path("format").isInt()) {
      throw new InputFailure(file, "is no result file, expected one written with --json");
    }
    int format = root.path("format").intValue();
    if (format != ResultJson.FORMAT) {
      throw new InputFailure(
          file, "is a result of format %d, expected %d".formatted(format, ResultJson.FORMAT));
    }
    String other = root.path("job").path("tag").asText();
    if (!other.equals(tag)) {
      throw new InputFailure(
          file, "is a result of \"%s\", expected one of \"%s\"".formatted(other, tag));
    }
    return new Reference(
        file,
        stop(root.path("travel"), "closed_stop"),
        stop(root.path("travel"), "open_stop"),
        changes(root));
  }

  private JsonNode tree(Path path) {
    try {
      if (Files.isDirectory(path)) {
        throw new InputFailure(file, "is a folder, expected a result file");
      }
      if (Files.size(path) > MOST_BYTES) {
        throw new InputFailure(file, "is larger than 64 MiB, expected a result file");
      }
      return new ObjectMapper().readTree(Files.readAllBytes(path));
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a result file");
    } catch (JacksonException e) {
      JsonLocation at = e.getLocation();
      String problem =
          "not JSON: " + String.valueOf(e.getOriginalMessage()).replaceAll("\\R\\s*", " ");
      throw at == null || at.getLineNr() < 1
          ? new InputFailure(file, problem)
          : new InputFailure(file, at.getLineNr(), Math.max(1, at.getColumnNr()), problem);
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private Optional<Reference.Stop> stop(JsonNode travel, String key) {
    JsonNode stop = travel.path(key);
    if (stop.isNull() || stop.isMissingNode()) {
      return Optional.empty();
    }
    return Optional.of(
        new Reference.Stop(
            number(stop, "value", "travel." + key), number(stop, "u", "travel." + key)));
  }

  private List<Reference.Seen> changes(JsonNode root) {
    int judged = -1;
    for (JsonNode setting : root.path("settings")) {
      if (setting.path("judged").asBoolean()) {
        judged = setting.path("number").asInt(-1);
      }
    }
    List<Reference.Seen> seen = new ArrayList<>();
    int index = 0;
    for (JsonNode change : root.path("changes")) {
      String where = "changes[" + index++ + "]";
      boolean travelling = !change.path("at_rest").asBoolean() && change.path("reading").isNumber();
      if (travelling && change.path("setting").asInt(-1) == judged) {
        direction(change)
            .ifPresent(
                direction ->
                    seen.add(
                        new Reference.Seen(
                            change.path("contact").asText(),
                            state(change, where),
                            direction,
                            number(change, "reading", where),
                            number(change, "reading_u", where))));
      }
    }
    return seen;
  }

  private static Optional<Direction> direction(JsonNode change) {
    String word = change.path("direction").asText();
    for (Direction direction : Direction.values()) {
      if (direction.word().equals(word)) {
        return Optional.of(direction);
      }
    }
    return Optional.empty();
  }

  private ContactState state(JsonNode change, String where) {
    return switch (change.path("to").asText()) {
      case "open" -> ContactState.OPEN;
      case "closed" -> ContactState.CLOSED;
      default ->
          throw new InputFailure(
              file, where + ".to is neither \"open\" nor \"closed\", expected a result file");
    };
  }

  private double number(JsonNode node, String key, String where) {
    JsonNode value = node.path(key);
    if (!value.isNumber()) {
      throw new InputFailure(
          file, "%s.%s is no number, expected a result file".formatted(where, key));
    }
    return value.doubleValue();
  }
}
