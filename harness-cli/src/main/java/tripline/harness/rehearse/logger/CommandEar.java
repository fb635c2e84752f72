package tripline.harness.rehearse.logger;

import tripline.link.BodySink;
import tripline.link.LinkDecoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;

/** Finds commands in what the host sends, and counts what is none (SPEC L4). */
final class CommandEar implements BodySink {
  private static final int FIRST_COMMAND = 0x40;

  /** Takes what was heard. */
  interface Listener {
    /** A command whose every field is right. */
    void onCommand(LinkMessage command, int sequence);

    /** A whole message that is no right command. */
    void onRefused(Cause why, int commandCode, int sequence);
  }

  private final Listener listener;
  private final LinkDecoder decoder = new LinkDecoder(this);
  private long malformed;

  CommandEar(Listener listener) {
    this.listener = listener;
  }

  void hear(byte[] bytes, int from, int length) {
    decoder.accept(bytes, from, length);
  }

  /** Damaged or malformed messages so far. */
  long bad() {
    return decoder.counters().damaged() + malformed;
  }

  /**
   * What only a logger sends is no command: not answered, so that two loggers on a line are quiet.
   */
  @Override
  public void onBody(MessageType type, byte[] body, int length) {
    if (type.code() >= FIRST_COMMAND) {
      listener.onCommand(LinkMessage.read(type, body), BodySink.sequence(body));
    }
  }

  @Override
  public void onSetAside(Cause cause, byte[] body, int length) {
    malformed += cause == Cause.MALFORMED ? 1 : 0;
    boolean sequenceRead = length > 0;
    int code = sequenceRead ? body[0] & 0xff : 0;
    boolean unknownName = cause == Cause.UNKNOWN && code == 0;
    if (sequenceRead && (code >= FIRST_COMMAND || unknownName)) {
      listener.onRefused(cause, code, BodySink.sequence(body));
    }
  }
}
