package tripline.capture;

import java.util.Optional;
import tripline.sample.Drive;

/**
 * How a capture began.
 *
 * @param major version of the format
 * @param minor version of the format
 * @param drive what moves the valve, where the operator said so
 * @param zero whether position zero is that of the recording before, where the operator said so
 * @param utcMicros microseconds since 1970 by the host's clock; 0 unknown
 * @param jobSha256 digest of the job sheet, lower-case hex; of zeros where there is none
 * @param program what wrote the capture, and its version
 * @param port the port, as the operator named it
 * @param tag the actuator
 * @param job file of the job sheet, as the operator named it
 */
public record CaptureBegin(
    int major,
    int minor,
    Optional<Drive> drive,
    Optional<Zero> zero,
    long utcMicros,
    String jobSha256,
    String program,
    String port,
    String tag,
    String job) {
  /** Position zero against the recording before. */
  public enum Zero {
    KEPT,
    LOST
  }
}
