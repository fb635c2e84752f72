package tripline.link;

/**
 * The operator pressed something (SPEC §5, 06).
 *
 * @param kindCode see {@link #kind}
 * @param sourceCode see {@link #source}
 * @param number marks since start, modulo 2^16
 * @param stampMicros when it was pressed
 * @param text at most 120 bytes of UTF-8
 */
public record MarkMessage(int kindCode, int sourceCode, int number, long stampMicros, String text)
    implements LinkMessage {

  /** What it says. */
  public MarkKind kind() {
    return MarkKind.of(kindCode);
  }

  /** Who made it. */
  public MarkSource source() {
    return MarkSource.of(sourceCode);
  }

  @Override
  public MessageType type() {
    return MessageType.MARK;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(MarkLayout.KIND, kindCode);
    out.put8(MarkLayout.SOURCE, sourceCode);
    out.put16(MarkLayout.NUMBER, number);
    out.put64(MarkLayout.STAMP, stampMicros);
    out.strings(MarkLayout.TEXT);
    out.string(text);
    return out.checked();
  }

  static MarkMessage read(byte[] body) {
    BodyStrings strings = new BodyStrings(body, MarkLayout.TEXT);
    return new MarkMessage(
        Le.u8(body, MarkLayout.KIND),
        Le.u8(body, MarkLayout.SOURCE),
        Le.u16(body, MarkLayout.NUMBER),
        Le.i64(body, MarkLayout.STAMP),
        strings.next());
  }
}
