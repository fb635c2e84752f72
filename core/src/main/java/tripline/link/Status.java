package tripline.link;

/**
 * State and counters of a logger (SPEC §5, 03).
 *
 * @param stateCode see {@link #state}
 * @param utcSourceCode see {@link #utcSource}
 * @param backlog fullest transmit buffer since the last status, 0-1000 per mille
 * @param stampMicros now, on the logger's clock
 * @param utcMicros the same moment, microseconds since 1970; 0 unknown
 * @param session as in identity
 * @param rateMilliHz sampling rate in force, mHz
 * @param samples sampling instants since start, modulo 2^32
 * @param samplesLost of these, lost inside the logger
 * @param edgesLost edges lost since start
 * @param messagesDropped made but never sent, since power-up
 * @param badReceived damaged or malformed messages received, since power-up
 */
public record Status(
    int stateCode,
    int utcSourceCode,
    int backlog,
    long stampMicros,
    long utcMicros,
    long session,
    long rateMilliHz,
    long samples,
    long samplesLost,
    long edgesLost,
    long messagesDropped,
    long badReceived)
    implements LinkMessage {

  /** What the logger is doing. */
  public LoggerState state() {
    return LoggerState.of(stateCode);
  }

  /** Where the time of day comes from. */
  public UtcSource utcSource() {
    return UtcSource.of(utcSourceCode);
  }

  @Override
  public MessageType type() {
    return MessageType.STATUS;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(StatusLayout.STATE, stateCode);
    out.put8(StatusLayout.UTC_SOURCE, utcSourceCode);
    out.put16(StatusLayout.BACKLOG, backlog);
    out.put64(StatusLayout.STAMP, stampMicros);
    out.put64(StatusLayout.UTC, utcMicros);
    out.put32(StatusLayout.SESSION, session);
    out.put32(StatusLayout.RATE, rateMilliHz);
    out.put32(StatusLayout.SAMPLES, samples);
    out.put32(StatusLayout.SAMPLES_LOST, samplesLost);
    out.put32(StatusLayout.EDGES_LOST, edgesLost);
    out.put32(StatusLayout.MESSAGES_DROPPED, messagesDropped);
    out.put32(StatusLayout.BAD_RECEIVED, badReceived);
    return out.checked(StatusLayout.END);
  }

  static Status read(byte[] body) {
    return new Status(
        Le.u8(body, StatusLayout.STATE),
        Le.u8(body, StatusLayout.UTC_SOURCE),
        Le.u16(body, StatusLayout.BACKLOG),
        Le.i64(body, StatusLayout.STAMP),
        Le.i64(body, StatusLayout.UTC),
        Le.u32(body, StatusLayout.SESSION),
        Le.u32(body, StatusLayout.RATE),
        Le.u32(body, StatusLayout.SAMPLES),
        Le.u32(body, StatusLayout.SAMPLES_LOST),
        Le.u32(body, StatusLayout.EDGES_LOST),
        Le.u32(body, StatusLayout.MESSAGES_DROPPED),
        Le.u32(body, StatusLayout.BAD_RECEIVED));
  }
}
