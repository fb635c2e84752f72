package tripline.harness.conform;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.link.BodySink;
import tripline.link.Identity;
import tripline.link.LinkCounters;
import tripline.link.LinkDecoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;
import tripline.link.Status;

/** Keeps all that a logger sends, with the time it came. */
final class Witness implements BodySink {
  private final LongSupplier nanoTime;
  private final LinkDecoder decoder = new LinkDecoder(this);
  private final List<Heard> heard = new ArrayList<>();
  private final List<String> setAside = new ArrayList<>();
  private long idleBefore;
  private LinkCounters forgotten;
  private @Nullable Identity identity;
  private @Nullable Status status;

  Witness(LongSupplier nanoTime) {
    this.nanoTime = nanoTime;
    forgotten = decoder.counters();
  }

  /** What came so far was of before the examination. */
  void forget() {
    heard.clear();
    setAside.clear();
    forgotten = decoder.counters();
  }

  void accept(byte[] bytes, int length) {
    decoder.accept(bytes, 0, length);
  }

  @Override
  public void onBody(MessageType type, byte[] body, int length) {
    LinkMessage message = LinkMessage.read(type, body);
    long idle = decoder.counters().idle();
    heard.add(
        new Heard(
            nanoTime.getAsLong(),
            BodySink.sequence(body),
            message,
            Objects.requireNonNull(decoder.encoding()),
            idle > idleBefore));
    idleBefore = idle;
    if (message instanceof Identity said) {
      identity = said;
    } else if (message instanceof Status said) {
      status = said;
    }
  }

  @Override
  public void onSetAside(Cause cause, byte[] body, int length) {
    String type = length == 0 ? "a line" : "type %02x".formatted(body[0]);
    setAside.add("%s (%s) after %d messages".formatted(cause, type, heard.size()));
  }

  /** All messages so far, in order. */
  List<Heard> heard() {
    return heard;
  }

  /** Whole messages that were none of the protocol, in words. */
  List<String> setAside() {
    return setAside;
  }

  /** Bytes received, in all. */
  long bytes() {
    return decoder.counters().bytes();
  }

  /** Stretches of bytes that were no message. */
  long damaged() {
    return decoder.counters().damaged() - forgotten.damaged();
  }

  /** Bytes that were no message. */
  long skipped() {
    return decoder.counters().skipped() - forgotten.skipped();
  }

  /** Messages missing from the sequence. */
  long lost() {
    return decoder.counters().lost() - forgotten.lost();
  }

  /** Messages that came twice. */
  long repeated() {
    return decoder.counters().repeated() - forgotten.repeated();
  }

  /** Times the sequence began anew. */
  long restarts() {
    return decoder.counters().restarts() - forgotten.restarts();
  }

  /** Who it is, as it last said. */
  @Nullable Identity identity() {
    return identity;
  }

  /** Its last status. */
  @Nullable Status status() {
    return status;
  }
}
