package tripline.harness.summary;

/**
 * A figure of a result, turns.
 *
 * @param value best estimate
 * @param u its standard uncertainty
 */
record Figure(double value, double u) {
  /** Two-sided 95 % of the normal law. */
  private static final double NORMAL_95 = 1.959964;

  /** How far a later figure lies from this one; the two come from stops found apart. */
  Figure to(Figure later) {
    return new Figure(later.value - value, Math.hypot(u, later.u));
  }

  /** Whether it differs from zero beyond its 95 % interval. */
  boolean isSignificant() {
    return Math.abs(value) > NORMAL_95 * u;
  }

  double distance(double target) {
    return Math.abs(value - target);
  }
}
