package tripline.link;

/** What a channel measures. */
public enum ChannelKind implements Coded {
  /** Counts of travel. */
  POSITION(1),
  /** An electrical contact. */
  CONTACT(2),
  /** A kind this version does not know: to be ignored. Never sent. */
  OTHER(-1);

  private final int code;

  ChannelKind(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #OTHER}. */
  public static ChannelKind of(int code) {
    return Coded.of(values(), code, OTHER);
  }
}
