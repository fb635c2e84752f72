package tripline.link;

/**
 * Begin to sample (SPEC §6, 42).
 *
 * @param rateMilliHz mHz; 0: the rate set before
 * @param gatherMillis longest wait of a sample for its block, 0-1000 ms; 0: 20 ms
 */
public record Start(long rateMilliHz, int gatherMillis) implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.START;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put32(StartLayout.RATE, rateMilliHz);
    out.put16(StartLayout.GATHER, gatherMillis);
    return out.checked(StartLayout.END);
  }

  static Start read(byte[] body) {
    return new Start(Le.u32(body, StartLayout.RATE), Le.u16(body, StartLayout.GATHER));
  }
}
