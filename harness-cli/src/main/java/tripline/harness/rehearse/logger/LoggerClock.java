package tripline.harness.rehearse.logger;

/** A logger's own clock: time since power-up, cut to whole microseconds, that wraps in stamps. */
final class LoggerClock {
  private static final long NS_A_MICRO = 1000;

  private final long mask;
  private long zeroNs;
  private long utcMinusClockMicros;
  private boolean utcKnown;

  /** Reads 0 at a time of the rig. */
  LoggerClock(int bits, long zeroNs) {
    mask = (1L << bits) - 1;
    this.zeroNs = zeroNs;
  }

  /** What it reads at a time of the rig, microseconds, not wrapped. */
  long micros(long timeNs) {
    return Math.floorDiv(timeNs - zeroNs, NS_A_MICRO);
  }

  /** As a stamp. */
  long stamp(long timeNs) {
    return micros(timeNs) & mask;
  }

  /** A fault: it steps by so much. */
  void step(long byNs) {
    zeroNs -= byNs;
  }

  void setUtc(long utcMicros, long timeNs) {
    utcMinusClockMicros = utcMicros - micros(timeNs);
    utcKnown = true;
  }

  boolean utcKnown() {
    return utcKnown;
  }

  /** UTC, microseconds since 1970; 0 unknown. */
  long utc(long timeNs) {
    return utcKnown ? micros(timeNs) + utcMinusClockMicros : 0;
  }
}
