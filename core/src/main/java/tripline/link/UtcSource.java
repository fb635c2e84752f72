package tripline.link;

/** Where a logger has its time of day from. */
public enum UtcSource implements Coded {
  NONE(0),
  /** The command {@code time}. */
  HOST(1),
  /** A clock of its own. */
  BATTERY(2),
  /** A disciplined clock. */
  REFERENCE(3);

  private final int code;

  UtcSource(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #NONE}. */
  public static UtcSource of(int code) {
    return Coded.of(values(), code, NONE);
  }
}
