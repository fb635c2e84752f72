package tripline.harness.rehearse;

import tripline.harness.rehearse.logger.VirtualLogger;
import tripline.harness.rehearse.valve.Chance;

/** What lies between logger and host: a line rate, and what may be wrong with it. */
final class Cable {
  private static final int BITS = 8;

  /** Bits on the line a byte: start and stop bit with it. */
  private static final double BITS_ON_LINE = 10;

  private final Chance chance;
  private final double bytesPerNs;
  private double credit;
  private long creditedNs;
  private double errorRate;
  private long toNextError;
  private long stalledUntilNs = Long.MIN_VALUE;

  /**
   * @param baud bits a second; 0: as fast as the other end takes it
   */
  Cable(int baud, Chance chance) {
    this.chance = chance;
    bytesPerNs = baud / BITS_ON_LINE * 1e-9;
  }

  /** Share of bits that arrive wrong, both ways. */
  void errors(double rate) {
    errorRate = rate;
    toNextError = untilNext();
  }

  /** Nothing of the logger's gets through until then. */
  void stallUntil(long timeNs) {
    stalledUntilNs = timeNs;
  }

  /** Carries what the logger has to say, at most so many bytes. */
  int fromLogger(VirtualLogger logger, byte[] into, int room, long nowNs) {
    int most = Math.min(room, into.length);
    if (bytesPerNs > 0) {
      credit = Math.min(most + 1.0, credit + (nowNs - creditedNs) * bytesPerNs);
      creditedNs = nowNs;
      most = (int) Math.min(most, credit);
    }
    if (nowNs < stalledUntilNs) {
      return 0;
    }
    int taken = logger.take(into, most);
    credit -= bytesPerNs > 0 ? taken : 0;
    damage(into, taken);
    return taken;
  }

  /** Carries what the host said. */
  void toLogger(VirtualLogger logger, byte[] bytes, int length) {
    damage(bytes, length);
    logger.receive(bytes, 0, length);
  }

  private void damage(byte[] bytes, int length) {
    if (errorRate == 0) {
      return;
    }
    long bits = (long) length * BITS;
    while (toNextError < bits) {
      bytes[(int) (toNextError / BITS)] ^= (byte) (1 << toNextError % BITS);
      toNextError += 1 + untilNext();
    }
    toNextError -= bits;
  }

  /** Geometric: good bits before the next wrong one. */
  private long untilNext() {
    return errorRate == 0
        ? 0
        : (long) (StrictMath.log(1 - chance.uniform()) / StrictMath.log(1 - errorRate));
  }
}
