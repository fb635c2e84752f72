package tripline.live;

/**
 * Readings of the last third of a second, averaged over short blocks: where the reading is, whether
 * it moves, where it turned back. Fixed footprint, nothing allocated per reading.
 */
final class RecentReadings {
  private static final long BLOCK_NS = 25_000_000;

  /** How far back motion is looked for, ns. */
  private static final long LOOK_NS = 300_000_000;

  private static final int BLOCKS = 16;

  /** Less than this within {@link #LOOK_NS} nobody takes for motion, handwheel turns. */
  private static final double STILL_TURNS = 0.008;

  private final double least;
  private final TurningPoints turns = new TurningPoints();
  private final double[] mean = new double[BLOCKS];
  private final long[] endNs = new long[BLOCKS];
  private long blocks;
  private long beginNs;
  private double origin;
  private double sum;
  private int count;

  RecentReadings(double turnsPerUnit) {
    least = STILL_TURNS / Math.abs(turnsPerUnit);
  }

  /**
   * Takes a reading.
   *
   * @return whether it ended a block
   */
  boolean add(long timeNs, double reading) {
    boolean ends = count > 0 && timeNs - beginNs >= BLOCK_NS;
    if (ends) {
      close(timeNs);
    }
    if (count == 0) {
      beginNs = timeNs;
      origin = reading;
    }
    sum += reading - origin;
    count++;
    return ends;
  }

  private void close(long timeNs) {
    int at = (int) (blocks++ % BLOCKS);
    mean[at] = origin + sum / count;
    endNs[at] = timeNs;
    turns.add(mean[at]);
    sum = 0;
    count = 0;
  }

  /** Turning points up to the reading now. */
  TurningPoints turns() {
    TurningPoints now = turns.copy();
    if (count > 0) {
      now.add(origin + sum / count);
    }
    return now;
  }

  /**
   * Whether the reading moves, by the blocks of the last third of a second.
   *
   * @param band within this of each other blocks may stand still, reading units
   */
  Now.Motion motion(double band) {
    if (blocks == 0) {
      return Now.Motion.STANDING;
    }
    long last = blocks - 1;
    double newest = mean[(int) (last % BLOCKS)];
    double moved = 0;
    for (long b = last - 1; b >= Math.max(0, blocks - BLOCKS); b--) {
      int at = (int) (b % BLOCKS);
      if (endNs[(int) (last % BLOCKS)] - endNs[at] > LOOK_NS) {
        break;
      }
      double step = newest - mean[at];
      moved = Math.abs(step) > Math.abs(moved) ? step : moved;
    }
    if (Math.abs(moved) <= Math.max(least, band)) {
      return Now.Motion.STANDING;
    }
    return moved > 0 ? Now.Motion.RISING : Now.Motion.FALLING;
  }
}
