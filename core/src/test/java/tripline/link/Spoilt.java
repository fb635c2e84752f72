package tripline.link;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32C;

/** Messages with impossible content under a right check: what a faulty logger sends. */
final class Spoilt {
  private static final byte[] LIKELY = "0123456789abcdef=/+:,-\"\\ ~xk".getBytes(ISO_8859_1);

  private Spoilt() {}

  /** The same frame or line with some of its content changed, cut or doubled, and sealed again. */
  static byte[] anew(Random random, Encoding encoding, byte[] message) {
    return encoding == Encoding.FRAMES ? frame(random, message) : line(random, message);
  }

  private static byte[] frame(Random random, byte[] frame) {
    byte[] data = new byte[frame.length];
    int length = Cobs.decode(frame, 0, frame.length - 1, data) - 4;
    byte[] body = Arrays.copyOf(change(random, Arrays.copyOf(data, length), 4, false), 600);
    int kept = Math.max(4, Math.min(512, length + random.nextInt(5) - 2));
    Le.put32(body, kept, check(body, kept));
    byte[] out = new byte[Cobs.longest(kept + 4) + 1];
    return Arrays.copyOf(out, Cobs.encode(body, kept + 4, out, 0) + 1);
  }

  private static byte[] line(Random random, byte[] line) {
    byte[] content = change(random, Arrays.copyOf(line, line.length - 11), 0, true);
    if (random.nextInt(4) == 0) {
      content = Arrays.copyOf(content, random.nextInt(content.length + 1));
    }
    int length = content.length;
    byte[] out = Arrays.copyOf(content, length + 11);
    out[length] = ' ';
    out[length + 1] = '~';
    Ascii.putHex(out, length + 2, check(content, length), 8);
    out[length + 10] = '\n';
    return out;
  }

  private static byte[] change(Random random, byte[] bytes, int from, boolean text) {
    int changes = bytes.length > from ? random.nextInt(4) : 0;
    for (int i = 0; i < changes; i++) {
      int at = from + random.nextInt(bytes.length - from);
      bytes[at] =
          text
              ? LIKELY[random.nextInt(LIKELY.length)]
              : (byte) (bytes[at] ^ 1 << random.nextInt(8));
    }
    return bytes;
  }

  private static long check(byte[] bytes, int length) {
    CRC32C crc = new CRC32C();
    crc.update(bytes, 0, length);
    return crc.getValue();
  }
}
