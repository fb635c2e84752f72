package tripline.csv;

import java.util.Set;
import tripline.sample.Channels;

/**
 * What is wanted of a recording.
 *
 * @param channels contact channels, in the order of their bits
 * @param optional those of them the recording may lack; the others must have a column
 */
public record CsvRequest(Channels channels, Set<String> optional) {
  /**
   * @throws IllegalArgumentException if an optional channel is none of the channels
   */
  public CsvRequest {
    optional = Set.copyOf(optional);
    for (String name : optional) {
      if (channels.indexOf(name) < 0) {
        throw new IllegalArgumentException("'" + name + "' is optional and not asked for");
      }
    }
  }

  /** Every channel must have a column. */
  public static CsvRequest all(Channels channels) {
    return new CsvRequest(channels, Set.of());
  }
}
