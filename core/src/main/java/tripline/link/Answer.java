package tripline.link;

/**
 * The answer to a command (SPEC §5, 08).
 *
 * @param commandCode type of the command
 * @param resultCode see {@link #result}
 * @param to sequence of the command
 * @param value SPEC §6, 32 bits
 */
public record Answer(int commandCode, int resultCode, int to, long value) implements LinkMessage {

  /** How it went. */
  public Result result() {
    return Result.of(resultCode);
  }

  @Override
  public MessageType type() {
    return MessageType.ANSWER;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(AnswerLayout.COMMAND, commandCode);
    out.put8(AnswerLayout.RESULT, resultCode);
    out.put16(AnswerLayout.TO, to);
    out.put32(AnswerLayout.VALUE, value);
    return out.checked(AnswerLayout.END);
  }

  static Answer read(byte[] body) {
    return new Answer(
        Le.u8(body, AnswerLayout.COMMAND),
        Le.u8(body, AnswerLayout.RESULT),
        Le.u16(body, AnswerLayout.TO),
        Le.u32(body, AnswerLayout.VALUE));
  }
}
