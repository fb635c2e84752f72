package tripline.harness.conform;

import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import tripline.link.BodySink;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;

/**
 * Stands between a right logger and the host, and says everything again in its own words: as it
 * came, unless a subclass has a fault of its own. What it says has a sequence of its own.
 */
class Broken implements BodySink {
  /** What goes on for good is said later. */
  private record Held(long dueNs, LinkMessage message) {}

  private final LinkDecoder heard = new LinkDecoder(this);
  private final LinkEncoder encoder = new LinkEncoder();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final Deque<Held> held = new ArrayDeque<>();
  private final byte[] scratch = new byte[LinkEncoder.MOST_BYTES];
  private @Nullable Encoding talked;
  private long session = -1;
  private long nowNs;

  /** A message of the logger: said as it is. */
  void message(LinkMessage message) {
    say(message);
  }

  /** Bytes of the host on their way to the logger. */
  byte[] toLogger(byte[] bytes, long atNs) {
    nowNs = atNs;
    return bytes;
  }

  final byte[] toHost(byte[] bytes, long atNs) {
    nowNs = atNs;
    heard.accept(bytes, 0, bytes.length);
    return taken();
  }

  final byte[] later(long atNs) {
    nowNs = atNs;
    while (!held.isEmpty() && held.getFirst().dueNs() <= nowNs) {
      write(held.remove().message());
    }
    tick();
    return taken();
  }

  /** Time passes. */
  void tick() {}

  @Override
  public final void onBody(MessageType type, byte[] body, int length) {
    message(LinkMessage.read(type, body));
  }

  final long nowNs() {
    return nowNs;
  }

  final Encoding encoding() {
    Encoding now = heard.encoding();
    return now == null ? Encoding.FRAMES : now;
  }

  /** Says a message, after those that are held back. */
  final void say(LinkMessage message) {
    if (held.isEmpty()) {
      write(message);
    } else {
      held.add(new Held(held.getLast().dueNs(), message));
    }
  }

  /** Says a message so much later, and whatever comes after it not before it. */
  final void hold(LinkMessage message, long forNs) {
    held.add(new Held(nowNs + forNs, message));
  }

  private void write(LinkMessage message) {
    if (talked != null && talked != encoding()) {
      turn();
    }
    talked = encoding();
    if (message instanceof Identity identity && identity.session() != session) {
      if (session != -1) {
        while (encoder.nextSequence() != 0) {
          encoder.skip();
        }
      }
      session = identity.session();
      raw(new byte[] {(byte) (talked == Encoding.LINES ? '\n' : 0)});
    }
    raw(encoded(message, encoder));
  }

  /** Bytes of a message. */
  byte[] encoded(LinkMessage message, LinkEncoder by) {
    return Arrays.copyOf(scratch, by.encode(message, encoding(), scratch, 0));
  }

  /** Before a change of encoding. */
  void turn() {
    raw(new byte[] {0});
  }

  /** One sequence is passed over. */
  final void skip() {
    encoder.skip();
  }

  final int sequence() {
    return encoder.nextSequence();
  }

  final void raw(byte[] bytes) {
    out.writeBytes(bytes);
  }

  private byte[] taken() {
    byte[] bytes = out.toByteArray();
    out.reset();
    return bytes;
  }
}
