package tripline.link;

/**
 * Set the time of day (SPEC §6, 46).
 *
 * @param utcMicros microseconds since 1970, at least 1
 */
public record Time(long utcMicros) implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.TIME;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put64(TimeLayout.UTC, utcMicros);
    return out.checked(TimeLayout.END);
  }

  static Time read(byte[] body) {
    return new Time(Le.i64(body, TimeLayout.UTC));
  }
}
