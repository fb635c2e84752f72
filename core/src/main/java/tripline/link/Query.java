package tripline.link;

/** Ask for a status (SPEC §6, 49). */
public record Query() implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.QUERY;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    return out.checked();
  }
}
