package tripline.harness.rehearse.logger;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import tripline.link.Encoding;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;

/**
 * Messages encoded and waiting to be sent. What does not fit is dropped whole, and leaves a gap in
 * the sequence (SPEC L5, L13).
 */
final class TransmitBuffer {
  /** Three seconds of a line at 115 200 baud. */
  static final int ROOM = 32 * 1024;

  /** Fuller than this, rows are left out so that everything else still fits. */
  private static final int CROWDED = ROOM * 3 / 4;

  private static final int PER_MILLE = 1000;

  private final LinkEncoder encoder = new LinkEncoder();
  private final byte[] scratch = new byte[LinkEncoder.MOST_BYTES];
  private final Deque<byte[]> waiting = new ArrayDeque<>();
  private Encoding encoding;
  private int bytes;
  private int fullest;
  private long dropped;
  private int toLose;

  TransmitBuffer(Encoding encoding) {
    this.encoding = encoding;
  }

  Encoding encoding() {
    return encoding;
  }

  /** Talks in this encoding from here on, after a zero byte if it is another (SPEC L15). */
  void talk(Encoding next) {
    if (next != encoding) {
      encoding = next;
      put(new byte[] {0});
    }
  }

  /** A delimiter, in the encoding it talks in (SPEC L1). */
  void delimiter() {
    put(new byte[] {(byte) (encoding == Encoding.LINES ? '\n' : 0)});
  }

  void send(LinkMessage message) {
    int length = encoder.encode(message, encoding, scratch, 0);
    if (toLose > 0) {
      toLose--;
    } else if (bytes + length > ROOM) {
      dropped++;
    } else {
      put(Arrays.copyOf(scratch, length));
    }
  }

  private void put(byte[] piece) {
    waiting.add(piece);
    bytes += piece.length;
    fullest = Math.max(fullest, bytes);
  }

  /** The next so many messages vanish on their way, unknown to the logger. */
  void lose(int messages) {
    toLose += messages;
  }

  boolean crowded() {
    return bytes > CROWDED;
  }

  boolean halfEmpty() {
    return bytes < ROOM / 2;
  }

  /** Messages made but never sent. */
  long dropped() {
    return dropped;
  }

  /** Fullest since the last time this was asked, per mille. */
  int takeFullest() {
    int perMille = (int) Math.min(PER_MILLE, (long) fullest * PER_MILLE / ROOM);
    fullest = bytes;
    return perMille;
  }

  /** Moves bytes that wait out of it, at most so many; returns how many. */
  int take(byte[] into, int most) {
    int taken = 0;
    while (taken < most && !waiting.isEmpty()) {
      byte[] first = waiting.remove();
      int part = Math.min(first.length, most - taken);
      System.arraycopy(first, 0, into, taken, part);
      taken += part;
      if (part < first.length) {
        waiting.addFirst(Arrays.copyOfRange(first, part, first.length));
      }
    }
    bytes -= taken;
    return taken;
  }
}
