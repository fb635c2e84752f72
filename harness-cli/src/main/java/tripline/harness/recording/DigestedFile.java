package tripline.harness.recording;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads a file once, for a reader and for its SHA-256.
 *
 * <p>The digest has a thread of its own: under the first compiler alone, with which the program
 * starts fastest, it costs more than reading the recording does.
 */
final class DigestedFile {
  private static final int BUFFER = InputBytes.BUFFER;

  private static final int BUFFERS = 4;

  /** Part of the file; one of no length says that none follows. */
  private static final class Piece {
    final byte[] bytes;
    int length;

    Piece(byte[] bytes, int length) {
      this.bytes = bytes;
      this.length = length;
    }
  }

  private final BlockingQueue<Piece> free = new ArrayBlockingQueue<>(BUFFERS);
  private final BlockingQueue<Piece> full = new ArrayBlockingQueue<>(BUFFERS + 1);
  private final MessageDigest digest = sha256();
  private final Thread digester = new Thread(this::digest, "digest");

  /** Written by the digester, read when it has ended. */
  private @Nullable String hex;

  private DigestedFile() {
    digester.setDaemon(true);
  }

  /**
   * Reads a file to its end, or until no more is wanted.
   *
   * @return the digest, lower-case hex, for which its supplier waits; empty where the file was not
   *     read to its end
   * @throws IOException if the file cannot be read
   */
  static Optional<Supplier<String>> read(Path path, InputBytes.Sink sink) throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      byte[] first = new byte[BUFFER];
      int length = in.readNBytes(first, 0, BUFFER);
      if (length < BUFFER) {
        if (length > 0 && !sink.onBytes(first, length)) {
          return Optional.empty();
        }
        String hex = hex(sha256(), first, length);
        return Optional.of(() -> hex);
      }
      return new DigestedFile().read(in, first, sink);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("reading was interrupted", e);
    }
  }

  private Optional<Supplier<String>> read(InputStream in, byte[] first, InputBytes.Sink sink)
      throws IOException, InterruptedException {
    for (int i = 1; i < BUFFERS; i++) {
      free.add(new Piece(new byte[BUFFER], 0));
    }
    digester.start();
    boolean wanted;
    try {
      Piece piece = new Piece(first, BUFFER);
      do {
        // Both only read it; it is filled again once the digest has given it back.
        full.put(piece);
        wanted = sink.onBytes(piece.bytes, piece.length);
        piece = free.take();
        piece.length = in.readNBytes(piece.bytes, 0, BUFFER);
      } while (wanted && piece.length > 0);
    } finally {
      full.put(new Piece(new byte[0], 0));
    }
    return wanted ? Optional.of(this::taken) : Optional.empty();
  }

  /** Waits: where files are small the digest is not done when the reader is. */
  private String taken() {
    try {
      digester.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the digest was interrupted", e);
    }
    return Objects.requireNonNull(hex, "the digest has failed");
  }

  private void digest() {
    try {
      for (Piece piece = full.take(); piece.length > 0; piece = full.take()) {
        digest.update(piece.bytes, 0, piece.length);
        free.put(piece);
      }
      hex = HexFormat.of().formatHex(digest.digest());
    } catch (InterruptedException e) {
      throw new IllegalStateException("nobody may interrupt the digest", e);
    }
  }

  private static String hex(MessageDigest digest, byte[] bytes, int length) {
    digest.update(bytes, 0, length);
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
