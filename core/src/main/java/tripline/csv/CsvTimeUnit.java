package tripline.csv;

import java.util.Optional;

/** What the time column of a recording holds. */
public enum CsvTimeUnit {
  S("s", 9),
  MS("ms", 6),
  US("us", 3),
  NS("ns", 0),
  /** RFC 3339 stamps. */
  ISO("iso", 0);

  private final String word;
  private final int decimalsToNs;

  CsvTimeUnit(String word, int decimalsToNs) {
    this.word = word;
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

  /** How many decimal places to the right a number in this unit moves to become nanoseconds. */
  int decimalsToNs() {
    return decimalsToNs;
  }
}
