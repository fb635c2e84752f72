package tripline.travel;

import tripline.reduce.Trace;
import tripline.sample.Drive;

/**
 * A reduced recording with what is known about it as a whole.
 *
 * @param name file name (or capture name) for messages
 * @param sha256 digest of the file it came from, lower-case hex
 * @param drive what moved the valve
 * @param zero whether its position zero is that of the recording before it
 * @param trace what happened in it
 */
public record RecordingTrace(String name, String sha256, Drive drive, Zero zero, Trace trace) {
  /** Position zero against the recording before. */
  public enum Zero {
    KEPT,
    LOST
  }
}
