package tripline.link;

/** Follows the sequence of the messages to the host (SPEC D9). */
final class Sequence {
  /** So many messages back count as repeated; further back, the sender began again. */
  static final int REPEAT_REACH = 16;

  private static final int MODULUS = 0x10000;
  private static final long NONE = -1;

  private int expected = -1;
  private long session = NONE;
  private long lost;
  private long restarts;

  long lost() {
    return lost;
  }

  long restarts() {
    return restarts;
  }

  /**
   * Takes the next message.
   *
   * @param newSession session of a well-formed identity, or -1 for any other message
   * @return false if it is repeated
   */
  boolean accept(int sequence, long newSession) {
    int ahead = (sequence - expected) & (MODULUS - 1);
    if (expected >= 0 && ahead != 0) {
      if (newSession != NONE && newSession != session) {
        restarts++;
      } else if (ahead < MODULUS / 2) {
        lost += ahead;
      } else if (MODULUS - ahead <= REPEAT_REACH) {
        return false;
      } else {
        restarts++;
      }
    }
    expected = (sequence + 1) & (MODULUS - 1);
    session = newSession != NONE ? newSession : session;
    return true;
  }
}
