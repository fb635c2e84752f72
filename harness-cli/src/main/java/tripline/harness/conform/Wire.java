package tripline.harness.conform;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32C;
import tripline.link.MessageType;

/**
 * Puts bytes on the wire that no codec would: bodies and lines of one's own making, under a right
 * check (SPEC §2, §7). Written apart from the product's codec, so that each tests the other.
 */
final class Wire {
  private static final int LONGEST_RUN = 254;
  private static final int HEADER = 4;

  private Wire() {}

  /** A body as a frame with its delimiter. */
  static byte[] frame(int... body) {
    byte[] bytes = new byte[body.length];
    for (int i = 0; i < body.length; i++) {
      bytes[i] = (byte) body[i];
    }
    return frame(bytes);
  }

  /** A command with these bytes for its fields, as a frame with its delimiter. */
  static byte[] frame(MessageType type, int sequence, int... fields) {
    int[] body = new int[HEADER + fields.length];
    body[0] = type.code();
    body[2] = sequence & 0xff;
    body[3] = sequence >> 8;
    System.arraycopy(fields, 0, body, HEADER, fields.length);
    return frame(body);
  }

  /** A body as a frame with its delimiter. */
  static byte[] frame(byte[] body) {
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    data.writeBytes(body);
    long check = check(body);
    for (int i = 0; i < 4; i++) {
      data.write((int) (check >> (8 * i)));
    }
    return stuffed(data.toByteArray());
  }

  private static byte[] stuffed(byte[] data) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream run = new ByteArrayOutputStream();
    for (int i = 0; i <= data.length; i++) {
      boolean zero = i == data.length || data[i] == 0;
      if (!zero) {
        run.write(data[i]);
      }
      boolean full = run.size() == LONGEST_RUN;
      if (zero || full) {
        out.write(run.size() + 1);
        out.writeBytes(run.toByteArray());
        run.reset();
        if (full && i == data.length - 1) {
          break;
        }
      }
    }
    out.write(0);
    return out.toByteArray();
  }

  /** A line with its check and LF. */
  static byte[] line(String content) {
    byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
    String whole = "%s ~%08x\n".formatted(content, check(bytes));
    return whole.getBytes(StandardCharsets.UTF_8);
  }

  private static long check(byte[] bytes) {
    CRC32C crc = new CRC32C();
    crc.update(bytes);
    return crc.getValue();
  }
}
