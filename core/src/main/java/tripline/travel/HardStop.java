package tripline.travel;

import tripline.job.End;
import tripline.measure.Estimate;

/**
 * A hard stop.
 *
 * @param end which
 * @param reading where, reading units (unwrapped); carries the sheet's {@code stop_u} as a common
 *     part
 * @param source how it is known
 */
public record HardStop(End end, Estimate reading, Source source) {
  /** How a hard stop is known, most trusted first. */
  public enum Source {
    MARK,
    PLATEAU,
    TORQUE,
    REFERENCE;

    /** As the result writes it. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }
}
