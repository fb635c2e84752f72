package tripline.compare;

/** What may be said of a movement. */
public enum Seen {
  /** It moved, beyond what chance does to one family of figures in twenty. */
  MOVED("moved"),
  /** No movement was seen; how large one may have hidden is what the interval says. */
  NO_MOVE("no-move-seen"),
  /** It is not known in both results. */
  NOT_KNOWN("not-known");

  private final String word;

  Seen(String word) {
    this.word = word;
  }

  /** As the answer writes it. */
  public String word() {
    return word;
  }
}
