package tripline.harness.recording;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import tripline.harness.failure.InputFailure;
import tripline.harness.recording.RecordingFile.Digest;

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
   * @throws InputFailure if it cannot be read
   */
  public static void read(Path path, Sink sink) {
    read(path, Digest.NOT_WANTED, sink);
  }

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @return its SHA-256, lower-case hex, or an empty text where that is not wanted; empty where it
   *     was not read to its end
   * @throws InputFailure if it cannot be read
   */
  static Optional<String> read(Path path, Digest digest, Sink sink) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a recording");
    }
    try {
      return digest == Digest.TAKEN ? DigestedFile.read(path, sink) : plain(path, sink);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a recording");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable recording");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private static Optional<String> plain(Path path, Sink sink) throws IOException {
    byte[] bytes = new byte[BUFFER];
    try (InputStream in = Files.newInputStream(path)) {
      int length = in.readNBytes(bytes, 0, BUFFER);
      while (length > 0) {
        if (!sink.onBytes(bytes, length)) {
          return Optional.empty();
        }
        length = in.readNBytes(bytes, 0, BUFFER);
      }
      return Optional.of("");
    }
  }
}
