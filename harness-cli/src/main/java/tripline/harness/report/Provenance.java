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
 */
public record Provenance(String jobFile, String jobSha256, List<Optional<Instant>> started) {
  public Provenance {
    started = List.copyOf(started);
  }
}
