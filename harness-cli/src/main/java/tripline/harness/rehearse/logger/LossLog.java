package tripline.harness.rehearse.logger;

import tripline.link.LossCause;
import tripline.link.LossMessage;
import tripline.link.LossWhat;

/** Samples lost inside the logger, announced in one message a stretch (SPEC L6). */
final class LossLog {
  private final LoggerClock clock;
  private final TransmitBuffer buffer;
  private LossCause cause = LossCause.OVERRUN;
  private long count;
  private long first;
  private long firstStamp;
  private long lastStamp;
  private long samples;

  LossLog(LoggerClock clock, TransmitBuffer buffer) {
    this.clock = clock;
    this.buffer = buffer;
  }

  void restart() {
    count = 0;
    samples = 0;
  }

  void add(LossCause why, long number, long atNs) {
    if (count > 0 && why != cause) {
      announce();
    }
    if (count == 0) {
      cause = why;
      first = number;
      firstStamp = clock.stamp(atNs);
    }
    lastStamp = clock.stamp(atNs);
    count++;
    samples++;
  }

  boolean pending() {
    return count > 0;
  }

  void announce() {
    if (count > 0) {
      buffer.send(
          new LossMessage(
              cause.code(), LossWhat.SAMPLES.code(), count, first, firstStamp, lastStamp));
      count = 0;
    }
  }

  /** Samples lost since start. */
  long samples() {
    return samples;
  }
}
