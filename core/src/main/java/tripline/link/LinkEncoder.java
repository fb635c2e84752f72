package tripline.link;

import java.util.zip.CRC32C;

/** Turns messages into bytes to send, numbering them (SPEC §2, §4, §7). */
public final class LinkEncoder {
  /** Most bytes one message takes, as a frame or as a line. */
  public static final int MOST_BYTES = LineWriter.MOST_LINE;

  private final byte[] body = new byte[Layout.MOST_BODY + 4];
  private final CRC32C crc = new CRC32C();
  private final LineWriter lineWriter = new LineWriter();
  private int next;

  /** An encoder whose first message has sequence 0. */
  public LinkEncoder() {}

  /** Sequence that the next message gets. */
  public int nextSequence() {
    return next;
  }

  /** Passes over one sequence: a message that was made but is not sent (SPEC L5). */
  public void skip() {
    next = (next + 1) & 0xffff;
  }

  /**
   * Encodes a message with the next sequence.
   *
   * @param out with room for {@link #MOST_BYTES} from {@code at}
   * @return bytes written, delimiter included
   * @throws IllegalArgumentException if a field is outside its range
   */
  public int encode(LinkMessage message, Encoding encoding, byte[] out, int at) {
    int written = encode(message, next, encoding, out, at);
    skip();
    return written;
  }

  /** Encodes a message with a given sequence: a command said again (SPEC §6). */
  public int encode(LinkMessage message, int sequence, Encoding encoding, byte[] out, int at) {
    int length = message.writeBody(body);
    Le.put16(body, Layout.SEQUENCE, sequence);
    return encoding == Encoding.LINES
        ? lineWriter.write(message.type(), body, out, at)
        : frame(length, out, at);
  }

  private int frame(int length, byte[] out, int at) {
    crc.reset();
    crc.update(body, 0, length);
    Le.put32(body, length, crc.getValue());
    int written = Cobs.encode(body, length + 4, out, at);
    out[at + written] = 0;
    return written + 1;
  }
}
