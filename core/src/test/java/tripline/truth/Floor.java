package tripline.truth;

/**
 * The best that could be done for one change (trade formula): {@code floor² = s²/n + (v gap)²/12},
 * s the standard deviation of one reading about the true one (noise, and counts as q/sqrt(12)), n
 * position readings within half a second either side, v the true speed, gap the contact bracket.
 *
 * @param fit first term's root, turns
 * @param bracket second term's root, turns
 * @param readings n
 */
public record Floor(double fit, double bracket, int readings) {
  private static final long HALF_WINDOW_NS = 500_000_000;

  /** The floor of a change in what a logger last recorded. */
  public static Floor of(TrueChange change, Logger logger) {
    long at = Math.round(change.timeS() * 1e9);
    long skew = Math.round(logger.sensor().skewS() * 1e9);
    int n = logger.positions().within(at + skew - HALF_WINDOW_NS, at + skew + HALF_WINDOW_NS);
    double gapS = logger.contacts().gapAround(at) * 1e-9;
    double fit = n == 0 ? Double.NaN : logger.sensor().readingU() / Math.sqrt(n);
    return new Floor(fit, Math.abs(change.speed()) * gapS / Math.sqrt(12), n);
  }

  /** Root of the sum, turns. */
  public double turns() {
    return Math.hypot(fit, bracket);
  }
}
