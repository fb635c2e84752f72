package tripline.travel;

/** Where x counts from. */
public enum Datum {
  CLOSED_STOP("closed-stop"),
  OPEN_STOP("open-stop"),
  FIRST_READING("first-reading");

  private final String word;

  Datum(String word) {
    this.word = word;
  }

  /** As the result writes it. */
  public String word() {
    return word;
  }
}
