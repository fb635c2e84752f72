package tripline.harness.resultfile;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import tripline.harness.failure.InputFailure;
import tripline.harness.report.ResultJson;

/**
 * A result file.
 *
 * @param file as the user named it
 * @param sha256 digest of its bytes, lower-case hex
 * @param root the whole of it
 */
public record ResultFile(String file, String sha256, Field root) {
  /** A result of a thousand strokes is smaller. */
  private static final long MOST_BYTES = 64L << 20;

  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  /**
   * Reads a result file.
   *
   * @throws InputFailure if it is none, or one of another format
   */
  public static ResultFile read(Path path) {
    String file = path.toString();
    byte[] bytes = bytes(path, file);
    JsonNode tree = tree(bytes, file);
    Field root = Field.root(file, tree);
    if (!tree.isObject() || !tree.path("format").isInt()) {
      throw new InputFailure(file, "is no result file, expected one written with --json");
    }
    int format = tree.path("format").intValue();
    if (format != ResultJson.FORMAT) {
      throw new InputFailure(
          file, "is a result of format %d, expected %d".formatted(format, ResultJson.FORMAT));
    }
    return new ResultFile(file, sha256(bytes), root);
  }

  /** Plant tag of its valve. */
  public String tag() {
    return root.key("job").text("tag");
  }

  private static byte[] bytes(Path path, String file) {
    try {
      if (Files.isDirectory(path)) {
        throw new InputFailure(file, "is a folder, expected a result file");
      }
      if (Files.size(path) > MOST_BYTES) {
        throw new InputFailure(file, "is larger than 64 MiB, expected a result file");
      }
      return Files.readAllBytes(path);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a result file");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private static JsonNode tree(byte[] bytes, String file) {
    try {
      return JSON.readTree(bytes);
    } catch (JacksonException e) {
      JsonLocation at = e.getLocation();
      String problem = "not JSON, expected a result file";
      throw at == null || at.getLineNr() < 1
          ? new InputFailure(file, problem)
          : new InputFailure(file, at.getLineNr(), Math.max(1, at.getColumnNr()), problem);
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
