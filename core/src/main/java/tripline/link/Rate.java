package tripline.link;

/**
 * The rate of the next start (SPEC §6, 44).
 *
 * @param rateMilliHz mHz, at least 1
 */
public record Rate(long rateMilliHz) implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.RATE;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put32(RateLayout.RATE, rateMilliHz);
    return out.checked(RateLayout.END);
  }

  static Rate read(byte[] body) {
    return new Rate(Le.u32(body, RateLayout.RATE));
  }
}
