package tripline.travel;

/**
 * What bounce hides from samples T apart. A burst of length B catches a sample with chance B/T,
 * which shows the old state every other time; the change then seems to come one sample later. To
 * the middle of the bracket that adds B/2 in the mean and, since those caught lie near its end,
 * B²/2 in the mean square. With lengths spread exponentially about their mean m: a delay of m/2
 * with a variance of 3 m²/4, whatever T.
 */
final class UnseenBounce {
  /** Mean bounce of mechanical switches by a published bench test, s: 1.557 ms (longest 6.2 ms). */
  private static final double MEAN_S = 0.001557;

  /** Samples that lie closer than a burst see its first edges: shares of their distance. */
  private static final double MOST_LATE = 0.2;

  private static final double MOST_U = 0.5;

  private UnseenBounce() {}

  /** By how much a change seems late in the mean, s. */
  static double lateS(double gapS) {
    return Math.min(MEAN_S / 2, MOST_LATE * gapS);
  }

  /** Standard uncertainty of that delay, s. */
  static double uS(double gapS) {
    return Math.min(MEAN_S * Math.sqrt(0.75), MOST_U * gapS);
  }
}
