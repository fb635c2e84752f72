package tripline.study;

/**
 * One kind of acceptance.
 *
 * @param drives by what the strokes are made
 * @param strokes each way
 * @param scatter standard deviation of the cams from stroke to stroke, turns
 * @param stopU standard deviation with which a hard stop is felt, turns: common to all strokes
 * @param confidence asked for
 * @param share asked for
 */
record AcceptanceCell(
    Drives drives, int strokes, double scatter, double stopU, double confidence, double share) {
  /** What the strokes are made by. */
  enum Drives {
    /** All by hand: the stop is felt at every stroke, and the mean of its touches is common. */
    HAND,
    /** One stroke by hand that feels the stops, the others under power. */
    MOTOR
  }

  /** Where the seeds of this cell begin. */
  long firstSeed() {
    return 1_000_000L * strokes
        + Math.round(1e6 * scatter)
        + Math.round(1e8 * stopU)
        + (drives == Drives.HAND ? 10_000_000_000L : 0);
  }
}
