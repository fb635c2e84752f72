package tripline.csv;

import java.util.Optional;

/** What the time column of a recording holds. */
public enum CsvTimeUnit {
  S("s", "seconds", 9),
  MS("ms", "milliseconds", 6),
  US("us", "microseconds", 3),
  NS("ns", "nanoseconds", 0),
  /** RFC 3339 stamps. */
  ISO("iso", "stamps", 0);

  private final String word;
  private final String plural;
  private final int decimalsToNs;

  CsvTimeUnit(String word, String plural, int decimalsToNs) {
    this.word = word;
    this.plural = plural;
    this.decimalsToNs = decimalsToNs;
  }

  /** The unit as a job sheet writes it. */
  public String word() {
    return word;
  }

  /** The unit of a job sheet's word, if it is one. */
  public static Optional<CsvTimeUnit> of(String word) {
    for (CsvTimeUnit unit : values()) {
      if (unit.word.equals(word)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /** The unit in a message. */
  String plural() {
    return plural;
  }

  /** How many decimal places to the right a number in this unit moves to become nanoseconds. */
  int decimalsToNs() {
    return decimalsToNs;
  }
}
