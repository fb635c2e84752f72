package tripline.link;

/** Who made a mark. */
public enum MarkSource implements Coded {
  /** The logger's own. */
  BUTTON(1),
  /** The command {@code place}. */
  HOST(2);

  private final int code;

  MarkSource(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #BUTTON}. */
  public static MarkSource of(int code) {
    return Coded.of(values(), code, BUTTON);
  }
}
