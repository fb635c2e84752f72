package tripline.link;

/** Stop sampling or sending (SPEC §6, 43). */
public record Stop() implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.STOP;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    return out.checked();
  }
}
