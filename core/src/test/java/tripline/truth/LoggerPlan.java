package tripline.truth;

/**
 * How a logger samples and what it writes.
 *
 * @param rateHz rows scanned per second
 * @param jitter peak-to-peak jitter of the sampling instant, relative to the scan period (the stamp
 *     tells it truly)
 * @param stampNs stamps are cut to multiples of this, ns
 * @param writes what is written
 * @param inputs how contact inputs are read
 * @param positionEvery position is read every so many scans
 * @param contactsEvery contacts are read every so many scans
 * @param lostShare share of rows lost at random
 * @param repeatShare share of rows whose stamp repeats that of the row before
 * @param lossAtS time at which a stretch of rows is lost; NaN = never
 * @param lossS its length, s
 * @param stepBackAtS time at which the clock steps back; NaN = never
 * @param stepBackS by how much, s
 */
public record LoggerPlan(
    double rateHz,
    double jitter,
    long stampNs,
    Writes writes,
    Inputs inputs,
    int positionEvery,
    int contactsEvery,
    double lostShare,
    double repeatShare,
    double lossAtS,
    double lossS,
    double stepBackAtS,
    double stepBackS) {

  /** What is written. */
  public enum Writes {
    ALL_ROWS,
    CHANGES_ONLY
  }

  /** How contact inputs are read. */
  public enum Inputs {
    /**
     * The state at the sampling instant: an edge that was gone again between two scans is not seen.
     */
    SAMPLED,
    /** Pulse-catching inputs: an edge between two scans shows in the next row. */
    LATCHED
  }

  /**
   * A plain logger that writes every row, microsecond stamps, sampled inputs, a tenth of a period
   * of jitter.
   */
  public static LoggerPlan plain(double rateHz) {
    return new LoggerPlan(
        rateHz,
        0.1,
        1_000,
        Writes.ALL_ROWS,
        Inputs.SAMPLED,
        1,
        1,
        0,
        0,
        Double.NaN,
        0,
        Double.NaN,
        0);
  }

  public LoggerPlan with(Inputs how) {
    return new LoggerPlan(
        rateHz,
        jitter,
        stampNs,
        writes,
        how,
        positionEvery,
        contactsEvery,
        lostShare,
        repeatShare,
        lossAtS,
        lossS,
        stepBackAtS,
        stepBackS);
  }

  public LoggerPlan with(Writes what) {
    return new LoggerPlan(
        rateHz,
        jitter,
        stampNs,
        what,
        inputs,
        positionEvery,
        contactsEvery,
        lostShare,
        repeatShare,
        lossAtS,
        lossS,
        stepBackAtS,
        stepBackS);
  }

  public LoggerPlan withEvery(int positions, int contacts) {
    return new LoggerPlan(
        rateHz,
        jitter,
        stampNs,
        writes,
        inputs,
        positions,
        contacts,
        lostShare,
        repeatShare,
        lossAtS,
        lossS,
        stepBackAtS,
        stepBackS);
  }

  public LoggerPlan withStamps(double jitterShare, long resolutionNs) {
    return new LoggerPlan(
        rateHz,
        jitterShare,
        resolutionNs,
        writes,
        inputs,
        positionEvery,
        contactsEvery,
        lostShare,
        repeatShare,
        lossAtS,
        lossS,
        stepBackAtS,
        stepBackS);
  }

  public LoggerPlan withLosses(double share, double repeats, double atS, double lengthS) {
    return new LoggerPlan(
        rateHz,
        jitter,
        stampNs,
        writes,
        inputs,
        positionEvery,
        contactsEvery,
        share,
        repeats,
        atS,
        lengthS,
        stepBackAtS,
        stepBackS);
  }

  public LoggerPlan withStepBack(double atS, double byS) {
    return new LoggerPlan(
        rateHz,
        jitter,
        stampNs,
        writes,
        inputs,
        positionEvery,
        contactsEvery,
        lostShare,
        repeatShare,
        lossAtS,
        lossS,
        atS,
        byS);
  }
}
