package tripline.link;

/**
 * A host begins (SPEC §6, 41).
 *
 * @param major protocol version of the host, 1-255
 * @param minor protocol version of the host, 0-255
 * @param encodingCode see {@link #talk}
 */
public record Hello(int major, int minor, int encodingCode) implements LinkMessage {

  /** How the logger is to talk. */
  public Talk talk() {
    return Talk.of(encodingCode);
  }

  @Override
  public MessageType type() {
    return MessageType.HELLO;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(HelloLayout.MAJOR, major);
    out.put8(HelloLayout.MINOR, minor);
    out.put8(HelloLayout.ENCODING, encodingCode);
    return out.checked(HelloLayout.END);
  }

  static Hello read(byte[] body) {
    return new Hello(
        Le.u8(body, HelloLayout.MAJOR),
        Le.u8(body, HelloLayout.MINOR),
        Le.u8(body, HelloLayout.ENCODING));
  }
}
