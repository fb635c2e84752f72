package tripline.travel;

/**
 * What bounce hides from samples T apart. A burst of length B catches a sample with chance B/T,
 * which shows the old state every other time; the change then seems to come one sample later. To
 * the middle of the bracket that adds B/2 in the mean and, since those caught lie near its end,
 * B²/2 in the mean square. With lengths spread exponentially about their mean m: a delay of m/2
 * with a variance of 3 m²/4, if T is longer than a burst.
 */
final class UnseenBounce {
  /** Mean bounce of mechanical switches by a published bench test, s: 1.557 ms (longest 6.2 ms). */
  private static final double MEAN_S = 0.001557;

  /**
   * Samples that lie closer than a burst see its first edges. How fast mean and spread reach their
   * limits as the distance grows, in mean bursts: by simulation of bursts of even and of chance
   * edges (see the test).
   */
  private static final double MEAN_REACHES = 1;

  private static final double SPREAD_REACHES = 1 / 1.3;

  private UnseenBounce() {}

  /** By how much a change seems late in the mean, s. */
  static double lateS(double gapS) {
    return MEAN_S / 2 * -Math.expm1(-gapS / (MEAN_REACHES * MEAN_S));
  }

  /** Standard uncertainty of that delay, s. */
  static double uS(double gapS) {
    return MEAN_S * Math.sqrt(0.75) * -Math.expm1(-gapS / (SPREAD_REACHES * MEAN_S));
  }
}
