package tripline.link;

/**
 * Something is missing and the logger knows it (SPEC §5, 07).
 *
 * @param causeCode see {@link #cause}
 * @param whatCode see {@link #what}
 * @param count how many, at least 1, 32 bits
 * @param number of the first one lost, 32 bits
 * @param stampMicros of the first one lost, or the last moment known good
 * @param untilMicros of the last one lost, or the first moment known good
 */
public record LossMessage(
    int causeCode, int whatCode, long count, long number, long stampMicros, long untilMicros)
    implements LinkMessage {

  /** Why. */
  public LossCause cause() {
    return LossCause.of(causeCode);
  }

  /** What. */
  public LossWhat what() {
    return LossWhat.of(whatCode);
  }

  @Override
  public MessageType type() {
    return MessageType.LOSS;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(LossLayout.CAUSE, causeCode);
    out.put8(LossLayout.WHAT, whatCode);
    out.put32(LossLayout.COUNT, count);
    out.put32(LossLayout.NUMBER, number);
    out.put64(LossLayout.STAMP, stampMicros);
    out.put64(LossLayout.UNTIL, untilMicros);
    return out.checked(LossLayout.END);
  }

  static LossMessage read(byte[] body) {
    return new LossMessage(
        Le.u8(body, LossLayout.CAUSE),
        Le.u8(body, LossLayout.WHAT),
        Le.u32(body, LossLayout.COUNT),
        Le.u32(body, LossLayout.NUMBER),
        Le.i64(body, LossLayout.STAMP),
        Le.i64(body, LossLayout.UNTIL));
  }
}
