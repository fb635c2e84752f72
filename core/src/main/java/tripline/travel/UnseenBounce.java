package tripline.travel;

/**
 * What bounce hides from samples T apart. A burst of length B catches a sample with chance B/T,
 * which shows the old state every other time; the change then seems to come (T + B)/2 later than it
 * did. Lengths are taken to spread exponentially about their mean m.
 */
final class UnseenBounce {
  /** Mean bounce of mechanical switches by a published bench test, s: 1.557 ms (longest 6.2 ms). */
  private static final double MEAN_S = 0.001557;

  /**
   * The most that can hide, in sample distances: samples that lie closer than a burst see its first
   * edges, an edge or two of every other one.
   */
  private static final double MOST_RMS = 0.7;

  /** Likewise the most that it can delay a change in the mean. */
  private static final double MOST_LATE = 0.3;

  private UnseenBounce() {}

  /** By how much a change seems late in the mean, s: (m T + 2 m²) / (4 T). */
  static double lateS(double gapS) {
    double m = MEAN_S;
    return gapS <= 0 ? 0 : Math.min((m * gapS + 2 * m * m) / (4 * gapS), MOST_LATE * gapS);
  }

  /**
   * Standard uncertainty about that mean, s, from the mean square (m T² + 4 m² T + 6 m³) / (8 T).
   */
  static double uS(double gapS) {
    if (gapS <= 0) {
      return 0;
    }
    double m = MEAN_S;
    double square = (m * gapS * gapS + 4 * m * m * gapS + 6 * m * m * m) / (8 * gapS);
    double rms = Math.min(Math.sqrt(square), MOST_RMS * gapS);
    double late = lateS(gapS);
    return Math.sqrt(rms * rms - late * late);
  }
}
