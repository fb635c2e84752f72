package tripline.job;

/** On which side of its cam's trip point a contact is charted closed. */
public enum ClosedWhere {
  OPEN_SIDE("open-side"),
  CLOSED_SIDE("closed-side"),
  INSIDE("inside"),
  OUTSIDE("outside");

  private final String word;

  ClosedWhere(String word) {
    this.word = word;
  }

  /** As the job sheet writes it. */
  public String word() {
    return word;
  }
}
