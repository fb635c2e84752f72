package tripline.link;

/**
 * What became of the bytes received (SPEC §12). Always {@code bytes = delivered + setAside +
 * skipped + idle + pending}.
 *
 * @param bytes received
 * @param delivered in messages handed on
 * @param setAside in whole messages not handed on: unknown, malformed, repeated
 * @param skipped damaged
 * @param idle delimiters around nothing
 * @param messages handed on
 * @param damaged units that were no whole message
 * @param malformed whole messages with impossible content
 * @param unknown whole messages of a type or form that this version does not know
 * @param repeated messages that came before
 * @param lost messages that never came
 * @param restarts times the sender's sequence began again
 */
public record LinkCounters(
    long bytes,
    long delivered,
    long setAside,
    long skipped,
    long idle,
    long messages,
    long damaged,
    long malformed,
    long unknown,
    long repeated,
    long lost,
    long restarts) {
  /** Bytes of a unit that has not ended yet. */
  public long pending() {
    return bytes - delivered - setAside - skipped - idle;
  }
}
