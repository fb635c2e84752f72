package tripline.link;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The vectors of protocol-spec, read from the tree. */
final class VectorFiles {
  static final Path SPEC = Path.of(System.getProperty("tripline.root"), "protocol-spec");
  private static final ObjectMapper JSON = new ObjectMapper();

  private VectorFiles() {}

  /** Every case of valid, invalid or stream. */
  static List<JsonNode> cases(String kind) {
    List<JsonNode> all = new ArrayList<>();
    for (Path file : files(kind)) {
      JSON.readTree(read(file)).forEach(all::add);
    }
    return all;
  }

  /** What the schema of a kind objects to in its files. */
  static List<String> objections(String kind) {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(read(SPEC.resolve("vectors/schema/" + kind + ".schema.json")));
    List<String> all = new ArrayList<>();
    for (Path file : files(kind)) {
      for (Error error : schema.validate(read(file), InputFormat.JSON)) {
        all.add(file + ": " + error);
      }
    }
    return all;
  }

  static JsonNode tree(Object value) {
    return JSON.readTree(JSON.writeValueAsString(value));
  }

  private static List<Path> files(String kind) {
    try (Stream<Path> files = Files.list(SPEC.resolve("vectors").resolve(kind))) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
