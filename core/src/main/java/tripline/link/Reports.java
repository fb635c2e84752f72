package tripline.link;

/** How a channel is reported. */
public enum Reports implements Coded {
  /** In rows. */
  SAMPLED(1),
  /** By hardware-stamped edges only. */
  EDGES(2),
  /** By both. */
  BOTH(3);

  private final int code;

  Reports(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #SAMPLED}. */
  public static Reports of(int code) {
    return Coded.of(values(), code, SAMPLED);
  }
}
