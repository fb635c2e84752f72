package tripline.link;

/**
 * Makes stamps that wrap into times that do not (SPEC §4): of the times a stamp can stand for, the
 * one nearest to the last, or nearest to where the host's clock says it is by now.
 */
final class LinkClock {
  private static final int WIDEST = 53;
  private static final long UNKNOWN = Long.MIN_VALUE;

  private int bits = WIDEST;
  private boolean started;
  private long micros;
  private long last;
  private long hostMicros = UNKNOWN;
  private long hostAtLast = UNKNOWN;

  /** A new session: the next stamp is taken as it is. */
  void restart(int clockBits) {
    bits = clockBits;
    started = false;
  }

  /** What follows is received at this time of the host's clock, which never steps. */
  void host(long elapsedMicros) {
    hostMicros = elapsedMicros;
  }

  /** Whether an error of so much in the host's time may cost a wrap. */
  boolean isLostBy(long errorMicros) {
    return bits < WIDEST && errorMicros >= 1L << (bits - 2);
  }

  /** Unwrapped time of a stamp, ns. */
  long timeNs(long stampMicros) {
    if (started) {
      int unused = Long.SIZE - bits;
      long ahead = ((stampMicros - last) << unused) >> unused;
      micros += ahead + wraps(ahead);
    } else {
      micros = stampMicros;
      started = true;
    }
    last = stampMicros;
    hostAtLast = hostMicros;
    return micros * 1000;
  }

  /** Whole wraps by which the host's clock went further. */
  private long wraps(long ahead) {
    if (hostMicros == UNKNOWN || hostAtLast == UNKNOWN) {
      return 0;
    }
    long wrap = 1L << bits;
    long beyond = hostMicros - hostAtLast - ahead;
    return Math.max(0, Math.floorDiv(beyond + wrap / 2, wrap)) * wrap;
  }
}
