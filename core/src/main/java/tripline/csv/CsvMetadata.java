package tripline.csv;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tripline.sample.Drive;

/**
 * What the {@code #} lines before the header say.
 *
 * @param version of the recording format; {@value #VERSION} where none is stated
 * @param drive what moved the valve
 * @param started when the recording was started
 * @param zero whether position zero is that of the recording before
 * @param others lines with other keys, in their order
 */
public record CsvMetadata(
    int version,
    Optional<Drive> drive,
    Optional<Instant> started,
    Optional<PositionZero> zero,
    List<Item> others) {

  /** Key of the line that tells a recording and its version. */
  public static final String KEY = "tripline-recording";

  /** The version this reader knows. */
  public static final int VERSION = 1;

  public CsvMetadata {
    others = List.copyOf(others);
  }

  /**
   * A line nobody here knows the meaning of.
   *
   * @param key text before the colon, or the whole line where it has none
   * @param value text after the colon, possibly empty
   */
  public record Item(String key, String value) {}
}
