package tripline.link;

/**
 * Send a stored recording (SPEC §6, 48).
 *
 * @param id which, 32 bits
 * @param offset first byte wanted, 32 bits
 * @param length bytes wanted; 0: to the end
 */
public record Fetch(long id, long offset, long length) implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.FETCH;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put32(FetchLayout.ID, id);
    out.put32(FetchLayout.OFFSET, offset);
    out.put32(FetchLayout.LENGTH, length);
    return out.checked(FetchLayout.END);
  }

  static Fetch read(byte[] body) {
    return new Fetch(
        Le.u32(body, FetchLayout.ID),
        Le.u32(body, FetchLayout.OFFSET),
        Le.u32(body, FetchLayout.LENGTH));
  }
}
