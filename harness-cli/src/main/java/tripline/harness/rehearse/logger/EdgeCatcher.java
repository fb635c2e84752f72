package tripline.harness.rehearse.logger;

import tripline.link.EdgeBlock;

/** Stamps contact edges to the microsecond and gathers them for a moment (SPEC L7, L10, L11). */
final class EdgeCatcher {
  /** Well below the 20 ms of SPEC L7. */
  private static final long WAIT_NS = 8_000_000;

  private static final long NS_A_MICRO = 1000;

  private final long edged;
  private final long closedLow;
  private final Inputs inputs;
  private final LoggerClock clock;
  private final TransmitBuffer buffer;
  private final EdgeBlock block = new EdgeBlock();
  private long number;
  private long oldestNs;
  private long lastMicros;

  EdgeCatcher(LoggerMake make, Inputs inputs, LoggerClock clock, TransmitBuffer buffer) {
    edged = make.edged();
    closedLow = make.closedLow();
    this.inputs = inputs;
    this.clock = clock;
    this.buffer = buffer;
    block.begin(0, 0, 0);
  }

  void restart() {
    number = 0;
    block.begin(0, 0, 0);
  }

  /** Takes the edges of this step up to a time, from one on; returns the next. */
  int catchUpTo(long timeNs, int from) {
    int edge = from;
    while (edge < inputs.edges() && inputs.edgeNs(edge) <= timeNs) {
      int contact = inputs.edgeContact(edge);
      if ((edged >> contact & 1) == 1) {
        long closed = inputs.closedAt(inputs.edgeNs(edge));
        add(inputs.edgeNs(edge), contact, (int) ((closed ^ closedLow) >> contact & 1));
      }
      edge++;
    }
    return edge;
  }

  private void add(long timeNs, int contact, int level) {
    long micros = clock.micros(timeNs);
    if (block.edges() == 0 || !block.add((micros - lastMicros) * NS_A_MICRO, contact, level)) {
      send();
      block.begin(number, clock.stamp(timeNs), 0);
      block.add(0, contact, level);
      oldestNs = timeNs;
    }
    lastMicros = micros;
    number++;
  }

  void sendIfDue(long nowNs) {
    if (block.edges() > 0 && nowNs - oldestNs >= WAIT_NS) {
      send();
    }
  }

  void send() {
    if (block.edges() > 0) {
      buffer.send(block);
      block.begin(number, 0, 0);
    }
  }
}
