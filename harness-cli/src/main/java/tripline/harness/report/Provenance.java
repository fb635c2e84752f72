package tripline.harness.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Where a result comes from, as far as the result itself does not say.
 *
 * @param jobFile job sheet as the user named it
 * @param jobSha256 digest of its bytes, lower-case hex
 * @param started when each recording began by its logger's clock, in the order of the result's
 * @param reference the earlier result that was to bring hard stops
 */
public record Provenance(
    String jobFile, String jobSha256, List<Optional<Instant>> started, Optional<Source> reference) {
  public Provenance {
    started = List.copyOf(started);
  }

  /** Where a result comes from that took nothing from an earlier one. */
  public Provenance(String jobFile, String jobSha256, List<Optional<Instant>> started) {
    this(jobFile, jobSha256, started, Optional.empty());
  }

  /**
   * An input.
   *
   * @param file as the user named it
   * @param sha256 digest of its bytes, lower-case hex
   */
  public record Source(String file, String sha256) {}
}
