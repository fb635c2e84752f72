package tripline.harness.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Where a result comes from, as far as the result itself does not say.
 *
 * @param jobFile job sheet as the user named it
 * @param jobSha256 digest of its bytes, lower-case hex
 * @param recordings what each says of its making, in the order of the result's
 * @param reference the earlier result that was to bring hard stops
 */
public record Provenance(
    String jobFile, String jobSha256, List<Made> recordings, Optional<Source> reference) {
  public Provenance {
    recordings = List.copyOf(recordings);
  }

  /** Where a result comes from that took nothing from an earlier one. */
  public Provenance(String jobFile, String jobSha256, List<Made> recordings) {
    this(jobFile, jobSha256, recordings, Optional.empty());
  }

  /** What the recording of a number says, counted from 0; nothing where it is not known. */
  public Made recording(int index) {
    return index < recordings.size() ? recordings.get(index) : Made.UNKNOWN;
  }

  /**
   * What a recording says of its making.
   *
   * @param started when it began, by its logger's clock
   * @param logger who recorded it, as the logger or the file names it
   */
  public record Made(Optional<Instant> started, Optional<String> logger) {
    /** Nothing. */
    public static final Made UNKNOWN = new Made(Optional.empty(), Optional.empty());
  }

  /**
   * An input.
   *
   * @param file as the user named it
   * @param sha256 digest of its bytes, lower-case hex
   */
  public record Source(String file, String sha256) {}
}
