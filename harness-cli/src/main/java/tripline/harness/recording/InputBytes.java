package tripline.harness.recording;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
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

  /** Hands on all but a file that was packed, which its first bytes tell. */
  private static final class Unpacked implements Sink {
    private final String file;
    private final Sink sink;
    private boolean begun;

    Unpacked(String file, Sink sink) {
      this.file = file;
      this.sink = sink;
    }

    @Override
    public boolean onBytes(byte[] bytes, int length) {
      if (!begun) {
        begun = true;
        refusePacked(bytes, length);
      }
      return sink.onBytes(bytes, length);
    }

    private void refusePacked(byte[] bytes, int length) {
      boolean gzip = length > 1 && bytes[0] == 0x1f && bytes[1] == (byte) 0x8b;
      boolean zip = length > 3 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3;
      if (gzip || zip) {
        throw new InputFailure(
            file,
            "is compressed (%s), expected the recording itself: unpack it first"
                .formatted(gzip ? "gzip" : "zip"));
      }
    }
  }

  private InputBytes() {}

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @throws InputFailure if it cannot be read, or is compressed
   */
  public static void read(Path path, Sink sink) {
    read(path, Digest.NOT_WANTED, sink);
  }

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @return its SHA-256, lower-case hex, for which the supplier may wait, or an empty text where
   *     that is not wanted; empty where it was not read to its end
   * @throws InputFailure if it cannot be read, or is compressed
   */
  static Optional<Supplier<String>> read(Path path, Digest digest, Sink sink) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a recording");
    }
    Sink unpacked = new Unpacked(file, sink);
    try {
      return digest == Digest.TAKEN ? DigestedFile.read(path, unpacked) : plain(path, unpacked);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a recording");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable recording");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  private static Optional<Supplier<String>> plain(Path path, Sink sink) throws IOException {
    byte[] bytes = new byte[BUFFER];
    try (InputStream in = Files.newInputStream(path)) {
      int length = in.readNBytes(bytes, 0, BUFFER);
      while (length > 0) {
        if (!sink.onBytes(bytes, length)) {
          return Optional.empty();
        }
        length = in.readNBytes(bytes, 0, BUFFER);
      }
      return Optional.of(() -> "");
    }
  }
}
