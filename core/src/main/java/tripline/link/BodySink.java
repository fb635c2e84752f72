package tripline.link;

/**
 * Takes the messages of a {@link LinkDecoder}. The body belongs to the decoder and holds only
 * during the call.
 */
public interface BodySink {
  /** Why a whole message is not handed on as one. */
  enum Cause {
    UNKNOWN,
    MALFORMED,
    REPEATED
  }

  /** A message whose every field has been checked. */
  void onBody(MessageType type, byte[] body, int length);

  /**
   * A whole message set aside. Of a text line only the header is given, with type 0 if its name is
   * unknown; nothing at all (length 0) if its sequence cannot be read.
   */
  default void onSetAside(Cause cause, byte[] body, int length) {}

  /** Sequence of a body. */
  static int sequence(byte[] body) {
    return Le.u16(body, Layout.SEQUENCE);
  }
}
