package tripline.harness.seal;

/**
 * A file under seal.
 *
 * @param role {@code job}, {@code reference}, {@code recording}, {@code result} or {@code record}
 * @param path relative to the seal's folder where it can be, with {@code /} between names
 * @param bytes its size
 * @param sha256 digest of its bytes, lower-case hex
 */
public record SealedFile(String role, String path, long bytes, String sha256) {}
