package tripline.link;

import java.io.ByteArrayOutputStream;

/** Messages one after another as bytes, numbered from 0. */
final class Streams {
  private Streams() {}

  static byte[] of(Encoding encoding, LinkMessage... messages) {
    return of(encoding, new LinkEncoder(), messages);
  }

  static byte[] of(Encoding encoding, LinkEncoder encoder, LinkMessage... messages) {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    for (LinkMessage message : messages) {
      stream.write(out, 0, encoder.encode(message, encoding, out, 0));
    }
    return stream.toByteArray();
  }
}
