package tripline.measure;

/** What may be said of a figure against its limits. */
public enum Decision {
  /** Conforms, beyond doubt of the stated size. */
  ACCEPT,
  /** Does not conform, beyond doubt of the stated size. */
  REJECT,
  /** The uncertainty reaches across a limit, or nothing was measured. */
  UNDECIDED;

  /** Decision of a whole: one reject rejects, else one undecided leaves it undecided. */
  public Decision and(Decision other) {
    if (this == REJECT || other == REJECT) {
      return REJECT;
    }
    return this == UNDECIDED || other == UNDECIDED ? UNDECIDED : ACCEPT;
  }
}
