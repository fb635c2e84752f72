package tripline.link;

/** What is missing. */
public enum LossWhat implements Coded {
  SAMPLES(1),
  EDGES(2),
  /** Something this version does not know. Never sent. */
  OTHER(-1);

  private final int code;

  LossWhat(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #OTHER}. */
  public static LossWhat of(int code) {
    return Coded.of(values(), code, OTHER);
  }
}
