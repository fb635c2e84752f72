package tripline.reduce;

import tripline.measure.Shape;

/**
 * Position at an instant by a local fit of reading against time.
 *
 * @param reading fitted reading; NaN where there are no readings near
 * @param u standard uncertainty of the fit (noise, quantisation, curvature of the path), reading
 *     units
 * @param law of the error: rectangular where a coarse encoder's count is all that is known
 * @param speed fitted speed, reading units per second, signed
 * @param speedU its standard uncertainty
 * @param points readings (or count edges, with a coarse encoder) the fit rests on
 */
public record Place(double reading, double u, Shape law, double speed, double speedU, int points) {
  /** Nothing to fit. */
  public static final Place UNKNOWN =
      new Place(Double.NaN, Double.NaN, Shape.NORMAL, 0, Double.NaN, 0);

  /** Whether a position is known. */
  public boolean known() {
    return !Double.isNaN(reading);
  }
}
