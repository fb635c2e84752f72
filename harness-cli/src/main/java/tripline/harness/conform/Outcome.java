package tripline.harness.conform;

/** How a logger stands to one duty. */
public enum Outcome {
  /** Tried, and kept. */
  HOLDS("holds"),
  /** Seen broken. */
  FAILS("FAILS"),
  /** It should be kept, and nothing happened by which that could be told. */
  NOT_SEEN("not seen"),
  /** The logger has no such ability, or nobody asked for it to be tried. */
  NOT_TRIED("not tried");

  private final String word;

  Outcome(String word) {
    this.word = word;
  }

  /** As printed. */
  public String word() {
    return word;
  }
}
