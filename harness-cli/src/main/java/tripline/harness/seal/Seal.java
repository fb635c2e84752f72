package tripline.harness.seal;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.PublicKey;
import java.security.spec.InvalidKeySpecException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tripline.harness.failure.InputFailure;

/**
 * A seal as it is written.
 *
 * @param sealed when, by the clock of the machine
 * @param files what it names
 * @param key of whoever sealed
 * @param signed the text that was signed
 * @param signature over it, base64
 */
record Seal(
    Instant sealed, List<SealedFile> files, PublicKey key, String signed, String signature) {
  /** How the text of every seal begins. */
  static final String FIRST = "tripline-seal: 1\n";

  private static final String SIGNATURE = "signature: ";
  private static final Pattern FILE =
      Pattern.compile(
          "file: ([0-9a-f]{64}) (\\d{1,18}) (job|reference|recording|result|record) (.+)");

  static Seal of(Instant sealed, List<SealedFile> files, SealKey key) {
    StringBuilder text = new StringBuilder(FIRST);
    text.append("sealed: ").append(sealed).append('\n');
    for (SealedFile f : files) {
      text.append(
          "file: %s %d %s %s\n".formatted(f.sha256(), f.bytes(), f.role(), escaped(f.path())));
    }
    PublicKey open = key.pair().getPublic();
    text.append("key: ").append(Base64.getEncoder().encodeToString(open.getEncoded())).append('\n');
    String signed = text.toString();
    try {
      byte[] signature = Ed25519.sign(key.pair().getPrivate(), bytes(signed));
      if (!Ed25519.verifies(open, bytes(signed), signature)) {
        throw new InputFailure("key " + key.fingerprint(), "its two halves do not belong together");
      }
      String base64 = Base64.getEncoder().encodeToString(signature);
      return new Seal(sealed, List.copyOf(files), open, signed, base64);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("signing with a key of our own making", e);
    }
  }

  String text() {
    return signed + SIGNATURE + signature + "\n";
  }

  boolean isGenuine() {
    return Ed25519.verifies(key, bytes(signed), Base64.getDecoder().decode(signature));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Reads a seal; whether it is genuine is another question.
   *
   * @throws InputFailure if it is no seal
   */
  static Seal parse(String file, String text) {
    int end = text.lastIndexOf(SIGNATURE);
    if (!text.startsWith(FIRST) || end < 1 || text.charAt(end - 1) != '\n') {
      throw new InputFailure(file, "is no seal, expected one written by tripline seal");
    }
    String signed = text.substring(0, end);
    String[] lines = signed.split("\n", -1);
    List<SealedFile> files = new ArrayList<>();
    int last = lines.length - 2;
    for (int i = 2; i < last; i++) {
      Matcher line = FILE.matcher(lines[i]);
      if (!line.matches()) {
        throw new InputFailure(file, i + 1, 1, "expected: file: SHA-256 BYTES ROLE PATH");
      }
      files.add(
          new SealedFile(
              line.group(3),
              unescaped(line.group(4)),
              Long.parseLong(line.group(2)),
              line.group(1)));
    }
    try {
      Seal seal =
          new Seal(
              Instant.parse(after("sealed: ", lines[Math.min(1, last)])),
              List.copyOf(files),
              Ed25519.publicKey(
                  Base64.getDecoder().decode(after("key: ", lines[Math.max(0, last)]))),
              signed,
              canonical(text.substring(end + SIGNATURE.length()).strip()));
      // One way to write a seal: base64 has several for the same bytes.
      if (seal.text().equals(text)) {
        return seal;
      }
      throw new IllegalArgumentException("not as it is written");
    } catch (InvalidKeySpecException | IllegalArgumentException | DateTimeParseException e) {
      throw new InputFailure(file, "is a damaged seal: time, key or signature cannot be read");
    }
  }

  /** The one way to write the bytes of a base64 text, whatever bits its padding hides. */
  private static String canonical(String base64) {
    return Base64.getEncoder().encodeToString(Base64.getDecoder().decode(base64));
  }

  private static String after(String label, String line) {
    if (!line.startsWith(label)) {
      throw new IllegalArgumentException("no " + label);
    }
    return line.substring(label.length());
  }

  /** Control characters and the per cent sign as {@code %XX} of their UTF-16 units. */
  private static String escaped(String path) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < path.length(); i++) {
      char c = path.charAt(i);
      out.append(
          c < ' ' || c == '%' || c == 0x7F ? "%%%02X".formatted((int) c) : Character.toString(c));
    }
    return out.toString();
  }

  private static String unescaped(String path) {
    return Pattern.compile("%([0-9A-F]{2})")
        .matcher(path)
        .replaceAll(
            m -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(m.group(1), 16))));
  }
}
