package tripline.reduce;

/**
 * Which counts of the position reading a rest showed, how often each, and how often it went from
 * one to another. Fixed footprint; counts far from the first are not told apart but remembered.
 */
final class CountTally {
  /** Counts kept, the first reading's in the middle. */
  static final int LEVELS = 9;

  static final int MIDDLE = LEVELS / 2;

  /** Parts of a count that a reading may lie off the others'. */
  private static final double OFF_COUNT = 0.1;

  /** Fewer changes than these may be a motion. */
  private static final int LEAST_TURNS = 6;

  /** The same, of those that chance would bring. */
  private static final double LEAST_SHARE = 0.2;

  /** Share of the rest from the first of them to the last. */
  private static final double LEAST_SPREAD = 0.6;

  private final long[] readings = new long[LEVELS];
  private double origin;
  private double quantum;
  private double latest;
  private long total;
  private long turns;
  private long firstTurn;
  private long lastTurn;
  private boolean whole = true;

  /**
   * Readings equal to each other.
   *
   * @param one count, 0 where none has shown yet
   */
  void add(double reading, long times, double one) {
    if (total == 0) {
      origin = reading;
      latest = reading;
    }
    if (reading != latest) {
      firstTurn = turns == 0 ? total : firstTurn;
      lastTurn = total;
      turns++;
      latest = reading;
    }
    total += times;
    if (reading == origin) {
      readings[MIDDLE] += times;
      return;
    }
    quantum = quantum == 0 ? one : quantum;
    whole &= same(quantum, one);
    double counts = (reading - origin) / one;
    double level = Math.rint(counts) + MIDDLE;
    if (Math.abs(counts - Math.rint(counts)) > OFF_COUNT || level < 0 || level >= LEVELS) {
      whole = false;
    } else {
      readings[(int) level] += times;
    }
  }

  /** The first reading, that of the level in the middle. */
  double origin() {
    return origin;
  }

  /** Readings that showed a level. */
  long readings(int level) {
    return readings[level];
  }

  /** The level that most readings showed. */
  int mostShown() {
    int most = MIDDLE;
    for (int level = 0; level < LEVELS; level++) {
      most = readings[level] > readings[most] ? level : most;
    }
    return most;
  }

  /** All readings. */
  long total() {
    return total;
  }

  /** How often a reading differed from the one before. */
  long turns() {
    return turns;
  }

  /** Whether all readings so far lay on counts that are kept: else no further one matters. */
  boolean mayTell() {
    return whole;
  }

  /** Whether it can be told where it lies: all readings on counts of this size, and no motion. */
  boolean tells(double one) {
    return whole && total > 0 && (quantum == 0 || same(quantum, one)) && (steady() || flickers());
  }

  /** A count as seen differs in its last digits. */
  private static boolean same(double one, double other) {
    return Math.abs(one - other) < 1e-3 * other;
  }

  /** Whether it showed one count all the time. */
  boolean steady() {
    return turns == 0;
  }

  /**
   * Whether it went from count to count all the time, and about as often as readings do that differ
   * by chance. One that creeps across an edge, or swings slowly, does not; nor does one that came
   * to rest, or left it, over an edge.
   */
  boolean flickers() {
    return turns >= LEAST_TURNS
        && turns >= LEAST_SHARE * turnsByChance()
        && lastTurn - firstTurn >= LEAST_SPREAD * total;
  }

  /** How often independent readings that show these counts as often would differ. */
  double turnsByChance() {
    double same = 0;
    for (long level : readings) {
      double share = (double) level / total;
      same += share * share;
    }
    return (total - 1) * (1 - same);
  }

  /** A copy that goes on by itself. */
  CountTally copy() {
    CountTally copy = new CountTally();
    copy.origin = origin;
    System.arraycopy(readings, 0, copy.readings, 0, LEVELS);
    copy.quantum = quantum;
    copy.latest = latest;
    copy.total = total;
    copy.turns = turns;
    copy.firstTurn = firstTurn;
    copy.lastTurn = lastTurn;
    copy.whole = whole;
    return copy;
  }
}
