package tripline.develop;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.sample.Drive;

/**
 * Travel one way, between two turns of direction. Pauses on the way do not end a stroke.
 *
 * @param recording recording index
 * @param number 0-based within its recording
 * @param setting setting index
 * @param drive what moved it
 * @param direction which way
 * @param from x at its begin
 * @param to x at its end
 * @param startS begin, s from the recording's first stamp
 * @param endS end (standstill), s
 * @param extent how much of the travel it covers
 * @param stoppedBy what ended it
 * @param powered phases of a motor stroke
 */
public record Stroke(
    int recording,
    int number,
    int setting,
    Drive drive,
    Direction direction,
    double from,
    double to,
    double startS,
    double endS,
    Extent extent,
    StoppedBy stoppedBy,
    Optional<Powered> powered) {

  /** How much of the travel a stroke covers. */
  public enum Extent {
    /** It went past every trip point of the chart, from one end region to the other. */
    FULL,
    /** It left an end region and turned before the other. */
    FROM_END,
    /** It began on the way and came into the region of the end it ran to. */
    TO_END,
    /** Neither. */
    PART
  }

  /** Whether it went past every trip point of the chart, from one end region to the other. */
  public boolean full() {
    return extent == Extent.FULL;
  }

  /** Strokes of one development are told apart by recording and number. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Stroke stroke
        && stroke.recording == recording
        && stroke.number == number;
  }

  @Override
  public int hashCode() {
    return 31 * recording + number;
  }

  /** What ended a stroke. */
  public enum StoppedBy {
    LIMIT,
    TORQUE,
    HARD_STOP,
    OPERATOR,
    UNKNOWN;

    /** As the result writes it. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * Phases of a motor stroke.
   *
   * @param runTurnsPerS steady speed, magnitude
   * @param onsetS onset of deceleration, s
   * @param onsetX x there
   * @param standstillS standstill, s
   * @param standstillX x there
   * @param coast from the end's limit contact's change to standstill, turns; empty where that
   *     contact did not change
   * @param powerLost power failed: contactor fell out, or motion died away, with neither limit nor
   *     torque contact changed
   */
  public record Powered(
      Estimate runTurnsPerS,
      Optional<Estimate> onsetS,
      Optional<Estimate> onsetX,
      Optional<Estimate> standstillS,
      Optional<Estimate> standstillX,
      Optional<Estimate> coast,
      boolean powerLost) {}
}
