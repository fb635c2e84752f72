package tripline.capture;

import java.util.Arrays;
import java.util.zip.CRC32C;
import tripline.link.Cobs;

/** Bodies under a right check. */
final class Units {
  private Units() {}

  static byte[] of(byte[] body) {
    CRC32C crc = new CRC32C();
    crc.update(body);
    byte[] data = Arrays.copyOf(body, body.length + 4);
    for (int i = 0; i < 4; i++) {
      data[body.length + i] = (byte) (crc.getValue() >> (8 * i));
    }
    byte[] out = new byte[Cobs.longest(data.length) + 1];
    int length = Cobs.encode(data, data.length, out, 0);
    return Arrays.copyOf(out, length + 1);
  }
}
