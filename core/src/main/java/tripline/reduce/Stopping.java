package tripline.reduce;

/**
 * How a move came to rest.
 *
 * @param onsetNs when deceleration began, ns; -1 where it cannot be told
 * @param onsetUNs its standard uncertainty, ns
 * @param onsetReading reading there
 * @param onsetU its standard uncertainty
 * @param stillNs when the reading stood still, ns; -1 where the move did not end in a rest
 * @param stillUNs its standard uncertainty, ns
 * @param stillReading reading at standstill
 * @param stillU its standard uncertainty
 * @param overshoot how far beyond {@code stillReading} the reading went before it sprang back,
 *     reading units, &gt;= 0
 */
public record Stopping(
    long onsetNs,
    long onsetUNs,
    double onsetReading,
    double onsetU,
    long stillNs,
    long stillUNs,
    double stillReading,
    double stillU,
    double overshoot) {
  /** A move that did not end in a rest. */
  public static final Stopping NONE =
      new Stopping(-1, 0, Double.NaN, Double.NaN, -1, 0, Double.NaN, Double.NaN, 0);

  /** Whether standstill was seen. */
  public boolean stood() {
    return stillNs >= 0;
  }

  /** Whether the onset of deceleration was seen. */
  public boolean hasOnset() {
    return onsetNs >= 0;
  }
}
