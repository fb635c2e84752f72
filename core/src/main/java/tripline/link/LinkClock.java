package tripline.link;

/** Makes stamps that wrap into times that do not (SPEC §4). */
final class LinkClock {
  private static final int WIDEST = 53;

  private int bits = WIDEST;
  private boolean started;
  private long micros;
  private long last;

  /** A new session: the next stamp is taken as it is. */
  void restart(int clockBits) {
    bits = clockBits;
    started = false;
  }

  /** Unwrapped time of a stamp, ns. */
  long timeNs(long stampMicros) {
    if (started) {
      int unused = Long.SIZE - bits;
      micros += ((stampMicros - last) << unused) >> unused;
    } else {
      micros = stampMicros;
      started = true;
    }
    last = stampMicros;
    return micros * 1000;
  }
}
