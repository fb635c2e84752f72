package tripline.link;

/** Why something is missing. */
public enum LossCause implements Coded {
  /** The logger was too slow. */
  OVERRUN(1),
  /** No valid reading. */
  SENSOR(2),
  /** A stored recording is damaged. */
  STORAGE(3),
  /** The transmit buffer was full. */
  QUEUE(4);

  private final int code;

  LossCause(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #OVERRUN}. */
  public static LossCause of(int code) {
    return Coded.of(values(), code, OVERRUN);
  }
}
