package tripline.link;

/** The encoding a host asks for. */
public enum Talk implements Coded {
  KEEP(0),
  FRAMES(1),
  LINES(2);

  private final int code;

  Talk(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #KEEP}. */
  public static Talk of(int code) {
    return Coded.of(values(), code, KEEP);
  }
}
