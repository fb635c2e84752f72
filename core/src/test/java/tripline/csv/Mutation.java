package tripline.csv;

import java.util.Arrays;
import java.util.Random;

/** A file with something wrong in it: bytes changed, lost, doubled, exchanged or cut off. */
final class Mutation {
  private static final byte[] TELLING =
      "\0\r\n\",;\t|#-+.eE0919xNaTZ: \u001b\u007f\u00ff\u00c3\u00ef"
          .getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);

  private Mutation() {}

  static byte[] of(byte[] bytes, Random random) {
    byte[] changed = bytes.clone();
    for (int i = 1 + random.nextInt(3); i > 0 && changed.length > 0; i--) {
      changed = once(changed, random);
    }
    return changed;
  }

  private static byte[] once(byte[] bytes, Random random) {
    int at = random.nextInt(bytes.length);
    int length = Math.min(1 + random.nextInt(40), bytes.length - at);
    byte[] changed = bytes.clone();
    switch (random.nextInt(5)) {
      case 0 -> changed[at] = TELLING[random.nextInt(TELLING.length)];
      case 1 -> changed[at] = (byte) random.nextInt(256);
      case 2 -> changed = Arrays.copyOf(bytes, at);
      case 3 -> {
        changed = new byte[bytes.length - length];
        System.arraycopy(bytes, 0, changed, 0, at);
        System.arraycopy(bytes, at + length, changed, at, changed.length - at);
      }
      default -> {
        changed = new byte[bytes.length + length];
        System.arraycopy(bytes, 0, changed, 0, at + length);
        System.arraycopy(bytes, at, changed, at + length, bytes.length - at);
      }
    }
    return changed;
  }
}
