package tripline.harness.seal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tripline.harness.failure.InputFailure;
import tripline.harness.report.AnswerFile;

/** Puts files, and the inputs that a result among them names, under one seal. */
public final class Sealing {
  /** How the name of every seal ends. */
  static final String ENDING = ".seal";

  private record Input(String role, String file, String sha256) {}

  /** Objects that name an input, in a result or in a comparison of two. */
  private static final Map<String, String> ROLES =
      Map.of("job", "job", "reference", "reference", "before", "result", "after", "result");

  private final Path folder;
  private final List<SealedFile> files = new ArrayList<>();

  private Sealing(Path folder) {
    this.folder = folder;
  }

  /** Where the seal of a file lies. */
  public static Path sealOf(Path file) {
    return file.resolveSibling(file.getFileName() + ENDING);
  }

  /**
   * Seals files in one seal beside the first of them.
   *
   * @param paths results and records; of a result, the inputs it names too: job sheet, recordings,
   *     the earlier result that brought stops; of a comparison, both results
   * @param sealed now
   * @return the files under seal
   * @throws InputFailure if one cannot be read, or an input is no longer what the result was made
   *     from
   * @throws tripline.harness.failure.OutputFailure if the seal cannot be written
   */
  public static List<SealedFile> seal(List<Path> paths, SealKey key, Instant sealed) {
    Path seal = sealOf(paths.get(0));
    Path folder = seal.toAbsolutePath().normalize().getParent();
    Sealing sealing = new Sealing(folder == null ? seal.toAbsolutePath() : folder);
    for (Path path : paths) {
      sealing.add(path);
    }
    Seal made = Seal.of(sealed, sealing.files, key);
    AnswerFile.write(seal, out -> out.write(made.text()));
    return made.files();
  }

  private void add(Path path) {
    boolean json = path.toString().toLowerCase(Locale.ROOT).endsWith(".json");
    put(json ? "result" : "record", path);
    if (json) {
      for (Input input : inputs(path)) {
        SealedFile file = put(input.role, found(path, input.file));
        if (!file.sha256().equals(input.sha256)) {
          throw new InputFailure(
              input.file, "is not what " + path + " was made from: its digest differs");
        }
      }
    }
  }

  private SealedFile put(String role, Path path) {
    try {
      Digest digest = Digest.of(path);
      SealedFile file = new SealedFile(role, relative(path), digest.bytes(), digest.sha256());
      if (!files.contains(file)) {
        files.add(file);
      }
      return file;
    } catch (NoSuchFileException e) {
      throw new InputFailure(path.toString(), "no such file, expected a " + role);
    } catch (IOException e) {
      throw new InputFailure(path.toString(), "cannot be read: " + e.getMessage());
    }
  }

  /** As the result names it from where it was made, else beside the result. */
  private static Path found(Path result, String file) {
    Path asNamed = Path.of(file);
    Path beside = result.resolveSibling(asNamed.getFileName());
    return !Files.exists(asNamed) && Files.exists(beside) ? beside : asNamed;
  }

  private String relative(Path path) {
    Path whole = path.toAbsolutePath().normalize();
    boolean same = folder.getRoot() != null && folder.getRoot().equals(whole.getRoot());
    return (same ? folder.relativize(whole) : whole).toString().replace('\\', '/');
  }

  /** Job sheet, reference and recordings with the digests that the result has of them. */
  private static List<Input> inputs(Path result) {
    List<Input> inputs = new ArrayList<>();
    try (JsonParser json = new JsonFactory().createParser(result.toFile())) {
      if (json.nextToken() != JsonToken.START_OBJECT) {
        throw new InputFailure(result.toString(), "is no result file, expected an object");
      }
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        String key = json.currentName();
        JsonToken value = json.nextToken();
        if (ROLES.containsKey(key) && value == JsonToken.START_OBJECT) {
          inputs.add(input(ROLES.getOrDefault(key, key), json));
        } else if (key.equals("recordings") && value == JsonToken.START_ARRAY) {
          while (json.nextToken() == JsonToken.START_OBJECT) {
            inputs.add(input("recording", json));
          }
        } else {
          json.skipChildren();
        }
      }
    } catch (JsonProcessingException e) {
      throw new InputFailure(
          result.toString(),
          Math.max(1, e.getLocation().getLineNr()),
          Math.max(1, e.getLocation().getColumnNr()),
          "not JSON, expected a result file");
    } catch (IOException e) {
      throw new InputFailure(result.toString(), "cannot be read: " + e.getMessage());
    }
    if (inputs.isEmpty()) {
      throw new InputFailure(result.toString(), "names no inputs, expected a result file");
    }
    return inputs;
  }

  private static Input input(String role, JsonParser json) throws IOException {
    String file = "";
    String sha256 = "";
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String key = json.currentName();
      json.nextToken();
      if (key.equals("file")) {
        file = json.getText();
      } else if (key.equals("sha256")) {
        sha256 = json.getText();
      } else {
        json.skipChildren();
      }
    }
    return new Input(role, file, sha256);
  }
}
