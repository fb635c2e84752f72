package tripline.harness.recording;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import tripline.harness.failure.InputFailure;

/** The bytes of a recording file; what keeps them from being read is one line for the user. */
public final class InputBytes {
  /** Takes the bytes of a file, in order. */
  public interface Sink {
    /** Whether more is wanted. */
    boolean onBytes(byte[] bytes, int length);
  }

  private InputBytes() {}

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @return its SHA-256, lower-case hex; empty where it was not read to its end
   * @throws InputFailure if it cannot be read
   */
  public static Optional<String> read(Path path, Sink sink) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a recording");
    }
    try {
      return DigestedFile.read(path, sink::onBytes);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a recording");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable recording");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }
}
