package tripline.harness.recording;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import tripline.harness.failure.InputFailure;

/** The bytes of a recording file; what keeps them from being read is one line for the user. */
public final class InputBytes {
  /** Beats 1 MiB by a tenth, for it stays in the cache of the processor. */
  static final int BUFFER = 256 * 1024;

  /** Takes the bytes of a file, in order. */
  public interface Sink {
    /** Whether more is wanted. */
    boolean onBytes(byte[] bytes, int length);
  }

  private InputBytes() {}

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @return whether it was read to its end
   * @throws InputFailure if it cannot be read
   */
  public static boolean read(Path path, Sink sink) {
    return reading(path, () -> plain(path, sink));
  }

  /**
   * Reads a file to its end, or until no more is wanted, and takes its digest.
   *
   * @return its SHA-256, lower-case hex; empty where it was not read to its end
   * @throws InputFailure if it cannot be read
   */
  static Optional<String> digest(Path path, Sink sink) {
    return reading(path, () -> DigestedFile.read(path, sink::onBytes));
  }

  private interface Work<T> {
    T done() throws IOException;
  }

  private static <T> T reading(Path path, Work<T> work) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a recording");
    }
    try {
      return work.done();
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a recording");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable recording");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private static boolean plain(Path path, Sink sink) throws IOException {
    byte[] bytes = new byte[BUFFER];
    try (InputStream in = Files.newInputStream(path)) {
      int length = in.readNBytes(bytes, 0, BUFFER);
      while (length > 0) {
        if (!sink.onBytes(bytes, length)) {
          return false;
        }
        length = in.readNBytes(bytes, 0, BUFFER);
      }
      return true;
    }
  }
}
