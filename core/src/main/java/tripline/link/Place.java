package tripline.link;

/**
 * Put a mark into the stream (SPEC §6, 45).
 *
 * @param kindCode see {@link #kind}
 * @param text at most 120 bytes of UTF-8
 */
public record Place(int kindCode, String text) implements LinkMessage {

  /** What it says. */
  public MarkKind kind() {
    return MarkKind.of(kindCode);
  }

  @Override
  public MessageType type() {
    return MessageType.PLACE;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(PlaceLayout.KIND, kindCode);
    out.strings(PlaceLayout.TEXT);
    out.string(text);
    return out.checked();
  }

  static Place read(byte[] body) {
    BodyStrings strings = new BodyStrings(body, PlaceLayout.TEXT);
    return new Place(Le.u8(body, PlaceLayout.KIND), strings.next());
  }
}
