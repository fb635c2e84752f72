package tripline.harness.jobfile;

/**
 * Where a number of the sheet may lie.
 *
 * @param low lower limit
 * @param lowIs whether the lower limit itself is allowed
 * @param high upper limit
 * @param highIs whether the upper limit itself is allowed
 * @param unit what it counts, empty for a bare number
 */
record Range(double low, Limit lowIs, double high, Limit highIs, String unit) {
  /** Whether a limit belongs to its range. */
  enum Limit {
    ALLOWED,
    EXCLUDED
  }

  static Range from(double low, double high, String unit) {
    return new Range(low, Limit.ALLOWED, high, Limit.ALLOWED, unit);
  }

  static Range above(double low, double high, String unit) {
    return new Range(low, Limit.EXCLUDED, high, Limit.ALLOWED, unit);
  }

  static Range between(double low, double high, String unit) {
    return new Range(low, Limit.EXCLUDED, high, Limit.EXCLUDED, unit);
  }

  boolean holds(double value) {
    boolean aboveLow = lowIs == Limit.ALLOWED ? value >= low : value > low;
    return aboveLow && (highIs == Limit.ALLOWED ? value <= high : value < high);
  }

  /** As in "expected ...". */
  String words() {
    String number =
        lowIs == Limit.ALLOWED
            ? Values.shown(low) + " to " + Values.shown(high)
            : "more than "
                + Values.shown(low)
                + (highIs == Limit.ALLOWED ? " and at most " : " and less than ")
                + Values.shown(high);
    return unit.isEmpty() ? number : number + " " + unit;
  }
}
