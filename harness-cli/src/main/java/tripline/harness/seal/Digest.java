package tripline.harness.seal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * SHA-256 of a file (FIPS 180-4).
 *
 * @param sha256 lower-case hex
 * @param bytes how many bytes were read
 */
record Digest(String sha256, long bytes) {
  private static final int BLOCK = 64 << 10;

  static Digest of(Path file) throws IOException {
    MessageDigest digest = begun();
    long bytes = 0;
    byte[] block = new byte[BLOCK];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(block); n >= 0; n = in.read(block)) {
        digest.update(block, 0, n);
        bytes += n;
      }
    }
    return new Digest(HexFormat.of().formatHex(digest.digest()), bytes);
  }

  static MessageDigest begun() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
