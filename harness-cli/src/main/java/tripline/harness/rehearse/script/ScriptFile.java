package tripline.harness.rehearse.script;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tripline.harness.failure.InputError;
import tripline.harness.failure.InputFailure;

/** A script, read whole before anything moves. */
public final class ScriptFile {
  private static final long MOST_BYTES = 1 << 20;

  private ScriptFile() {}

  /**
   * Its lines, in order.
   *
   * @throws InputFailure with every line that says nothing sensible, or why it cannot be read
   */
  public static List<ScriptLine> read(Path file, LineReader reader) {
    List<ScriptLine> actions = new ArrayList<>();
    List<InputError> errors = new ArrayList<>();
    List<String> lines = lines(file);
    for (int i = 0; i < lines.size(); i++) {
      String text = lines.get(i);
      try {
        reader.read(text).ifPresent(action -> actions.add(new ScriptLine(text.strip(), action)));
      } catch (BadLine e) {
        errors.add(new InputError(file.toString(), i + 1L, 0, e.problem()));
      }
    }
    if (!errors.isEmpty()) {
      throw new InputFailure(errors);
    }
    return List.copyOf(actions);
  }

  private static List<String> lines(Path file) {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new InputFailure(file.toString(), "is larger than a script, expected up to 1 MiB");
      }
      return Files.readAllLines(file);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file.toString(), "no such file");
    } catch (CharacterCodingException e) {
      throw new InputFailure(file.toString(), "is not text in UTF-8");
    } catch (IOException e) {
      throw new InputFailure(
          file.toString(),
          Files.isDirectory(file)
              ? "is a folder, expected a script"
              : "cannot be read: " + e.getMessage());
    }
  }
}
