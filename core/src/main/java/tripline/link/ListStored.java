package tripline.link;

/** List stored recordings (SPEC §6, 47). */
public record ListStored() implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.LIST;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    return out.checked();
  }
}
