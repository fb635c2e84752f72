package tripline.harness.convert;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tripline.capture.CaptureBegin;
import tripline.sample.Drive;

/**
 * A recording without its rows.
 *
 * @param contacts names of its contact channels, in the order of their bits
 * @param drive what moved the valve, where it says so
 * @param zero whether position zero is that of the recording before, where it says so
 * @param started when it was started
 * @param logger what recorded it, where it says so
 * @param survey what its rows need
 */
record Facts(
    List<String> contacts,
    Optional<Drive> drive,
    Optional<CaptureBegin.Zero> zero,
    Optional<Instant> started,
    Optional<String> logger,
    Survey survey) {
  Facts {
    contacts = List.copyOf(contacts);
  }
}
