package tripline.travel;

/**
 * An adjuster was turned here: everything from this time on is another setting.
 *
 * @param recording recording index
 * @param timeNs time, ns of the recording's clock
 */
public record Adjustment(int recording, long timeNs) {
  /** Whether a time of a recording lies before this adjustment. */
  boolean after(int otherRecording, long otherNs) {
    return otherRecording < recording || (otherRecording == recording && otherNs < timeNs);
  }
}
