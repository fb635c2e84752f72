package tripline.harness.report;

import java.time.Instant;
import java.util.Optional;
import tripline.compare.Comparison;

/**
 * A comparison and the files it was made from.
 *
 * @param comparison what it says
 * @param before the earlier account's file
 * @param after the later account's file
 */
public record ComparedFiles(Comparison comparison, Named before, Named after) {

  /**
   * One of the files.
   *
   * @param file as the user named it
   * @param asFound its first setting is meant, not the one it judges
   * @param started when its recordings began, by the logger's clock
   */
  public record Named(String file, boolean asFound, Optional<Instant> started) {
    /** Which of its settings, and when it was recorded. */
    String words() {
      return (asFound ? ", as found" : "")
          + started
              .map(s -> ", recorded " + s.toString().replaceAll(":\\d\\d(\\.\\d+)?Z$", "Z"))
              .orElse("");
    }
  }

  /** The later file was recorded before the earlier one, by the loggers' clocks. */
  boolean isBackward() {
    return before.started().isPresent()
        && after.started().isPresent()
        && after.started().get().isBefore(before.started().get());
  }
}
