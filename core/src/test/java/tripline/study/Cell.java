package tripline.study;

/**
 * One corner of the grid.
 *
 * @param motion how the valve was moved
 * @param rateHz rows per second
 * @param noise standard deviation of the position noise, turns
 * @param resolution one count, turns
 */
record Cell(Motion motion, double rateHz, double noise, double resolution) {
  /** How the valve was moved. */
  enum Motion {
    /** Under power at an even speed, past every contact. */
    STRAIGHT,
    /** Under power, stopped by its limit contacts: it slows down right after their change. */
    TRIPPED,
    /** By hand: ripple with the handwheel's turn, slow wander, no pauses. */
    RIPPLE,
    /** By hand with pauses to change grip, and turning back a little after some of them. */
    PAUSES;

    boolean byHand() {
      return this == RIPPLE || this == PAUSES;
    }
  }

  static final double[] RATES_HZ = {50, 200, 1000, 5000};
  static final double[] NOISES = {0, 0.001, 0.003, 0.01};
  static final double[] RESOLUTIONS = {0.0005, 0.005, 1 / 24.0};

  /**
   * A number of this corner's own, for seeds: the same in every run, which the hash code of an
   * enum's constant, and so of this record, is not.
   */
  long number() {
    long number = motion.name().hashCode();
    for (double part : new double[] {rateHz, noise, resolution}) {
      number = 31 * number + Double.hashCode(part);
    }
    return number;
  }

  /** Counts, not noise, limit a reading. */
  boolean coarse() {
    return resolution > noise;
  }
}
