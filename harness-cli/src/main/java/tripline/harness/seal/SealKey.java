package tripline.harness.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.spec.InvalidKeySpecException;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.OutputFailure;

/** The pair of keys of whoever seals, kept in a file (RFC 7468) that only its owner can read. */
public final class SealKey {
  private static final Base64.Encoder LINES =
      Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII));

  private final KeyPair pair;

  private SealKey(KeyPair pair) {
    this.pair = pair;
  }

  /** Where a user's key lies unless told otherwise. */
  public static Path usualPlace(Map<String, String> environment, String home) {
    String roaming = environment.getOrDefault("APPDATA", "");
    String config = environment.getOrDefault("XDG_CONFIG_HOME", "");
    Path folder =
        !config.isEmpty()
            ? Path.of(config)
            : !roaming.isEmpty() ? Path.of(roaming) : Path.of(home, ".config");
    return folder.resolve("tripline").resolve("seal.key");
  }

  /**
   * The key in a file, made there first if there is none.
   *
   * @throws InputFailure if it is no key, or others can read it
   * @throws OutputFailure if it cannot be made
   */
  public static SealKey atOrNew(Path file) {
    Optional<SealKey> there = at(file);
    return there.isPresent() ? there.get() : made(file);
  }

  /**
   * The key in a file, empty if there is none.
   *
   * @throws InputFailure if it is no key, or others can read it
   */
  public static Optional<SealKey> at(Path file) {
    try {
      if (OwnersOnly.isOpenToOthers(file)) {
        throw new InputFailure(
            file.toString(), "others can read this key, expected it open to its owner only");
      }
      String text = Files.readString(file, StandardCharsets.US_ASCII);
      return Optional.of(
          new SealKey(
              new KeyPair(
                  Ed25519.publicKey(block(file, text, "PUBLIC KEY")),
                  Ed25519.privateKey(block(file, text, "PRIVATE KEY")))));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw new InputFailure(file.toString(), "cannot be read: " + e.getMessage());
    } catch (InvalidKeySpecException | IllegalArgumentException e) {
      throw new InputFailure(file.toString(), "holds no Ed25519 key, expected one made by seal");
    }
  }

  private static byte[] block(Path file, String text, String label) {
    Matcher block =
        Pattern.compile(
                "-----BEGIN " + label + "-----([A-Za-z0-9+/=\\s]*)-----END " + label + "-----")
            .matcher(text);
    if (!block.find()) {
      throw new InputFailure(file.toString(), "holds no " + label + " block, expected one");
    }
    return Base64.getMimeDecoder().decode(block.group(1));
  }

  private static SealKey made(Path file) {
    KeyPair pair = Ed25519.newPair();
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        OwnersOnly.createFolder(folder);
      }
      OwnersOnly.create(
          file,
          block("PRIVATE KEY", pair.getPrivate().getEncoded())
              + block("PUBLIC KEY", pair.getPublic().getEncoded()));
      return new SealKey(pair);
    } catch (FileAlreadyExistsException e) {
      throw new OutputFailure(file.toString(), "another program is making this key; try again");
    } catch (IOException e) {
      throw new OutputFailure(file.toString(), "the key could not be made: " + e.getMessage());
    }
  }

  private static String block(String label, byte[] bytes) {
    return "-----BEGIN "
        + label
        + "-----\n"
        + LINES.encodeToString(bytes)
        + "\n-----END "
        + label
        + "-----\n";
  }

  KeyPair pair() {
    return pair;
  }

  /** What people compare to know whose key it is. */
  public String fingerprint() {
    return Ed25519.fingerprint(pair.getPublic());
  }
}
