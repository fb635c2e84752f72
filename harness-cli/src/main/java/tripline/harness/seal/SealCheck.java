package tripline.harness.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tripline.harness.failure.InputFailure;

/**
 * What became of a seal and its files.
 *
 * @param seal the seal's file
 * @param genuine the seal itself is as it was signed
 * @param sealed when it says it was made
 * @param fingerprint of the key that signed it
 * @param files one a file, in the seal's order
 */
public record SealCheck(
    Path seal, boolean genuine, Instant sealed, String fingerprint, List<Found> files) {

  /** What became of a file. */
  public enum State {
    UNCHANGED,
    CHANGED,
    MISSING
  }

  /** A file under seal and what became of it. */
  public record Found(SealedFile file, State state) {}

  private static final long MOST_BYTES = 16L << 20;

  /**
   * Checks a seal and everything it names.
   *
   * @param path the seal, or the file it lies beside
   * @throws InputFailure if there is no seal, or it cannot be read
   */
  public static SealCheck of(Path path) {
    Path beside = Sealing.sealOf(path);
    boolean isSeal = path.toString().endsWith(Sealing.ENDING) || !Files.exists(beside);
    Path file = isSeal ? path : beside;
    String text = text(file);
    if (isSeal && !path.toString().endsWith(Sealing.ENDING) && !text.startsWith(Seal.FIRST)) {
      throw new InputFailure(
          path.toString(),
          "has no %s beside it, expected the seal itself to be named where the file was renamed or"
                  .formatted(beside.getFileName())
              + " moved");
    }
    Seal seal = Seal.parse(file.toString(), text);
    List<Found> files = new ArrayList<>();
    for (SealedFile sealed : seal.files()) {
      files.add(new Found(sealed, state(file, sealed)));
    }
    return new SealCheck(
        file, seal.isGenuine(), seal.sealed(), Ed25519.fingerprint(seal.key()), List.copyOf(files));
  }

  private static String text(Path file) {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new InputFailure(file.toString(), "is larger than 16 MiB, expected a seal");
      }
      return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new InputFailure(file.toString(), "no such file, expected a seal or a sealed file");
    } catch (IOException e) {
      throw new InputFailure(file.toString(), "cannot be read: " + e.getMessage());
    }
  }

  private static State state(Path seal, SealedFile sealed) {
    try {
      Digest now = Digest.of(seal.resolveSibling(sealed.path()));
      return now.bytes() == sealed.bytes() && now.sha256().equals(sealed.sha256())
          ? State.UNCHANGED
          : State.CHANGED;
    } catch (NoSuchFileException | InvalidPathException e) {
      return State.MISSING;
    } catch (IOException e) {
      throw new InputFailure(sealed.path(), "cannot be read: " + e.getMessage());
    }
  }

  /** Whether seal and files are all as they were. */
  public boolean isIntact() {
    return genuine && files.stream().allMatch(f -> f.state() == State.UNCHANGED);
  }
}
