package tripline.travel;

import tripline.reduce.Trace;
import tripline.sample.Drive;

/**
 * A reduced recording with what is known about it as a whole.
 *
 * @param name file name (or capture name) for messages
 * @param sha256 digest of the file it came from, lower-case hex; empty text where none was taken
 * @param drive what moved the valve, as a whole
 * @param told how that is known
 * @param zero whether its position zero is that of the recording before it
 * @param trace what happened in it
 */
public record RecordingTrace(
    String name, String sha256, Drive drive, Told told, Zero zero, Trace trace) {

  /** One whose drive was stated. */
  public RecordingTrace(String name, String sha256, Drive drive, Zero zero, Trace trace) {
    this(name, sha256, drive, Told.STATED, zero, trace);
  }

  /** How it is known what moved the valve. */
  public enum Told {
    /** Somebody said so, or nothing tells. */
    STATED,
    /** Nobody said so: a stroke is the motor's where a contactor was in. */
    BY_CONTACTORS
  }

  /** Position zero against the recording before. */
  public enum Zero {
    KEPT,
    LOST
  }
}
