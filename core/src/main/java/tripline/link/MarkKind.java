package tripline.link;

/** What the operator said by a mark. */
public enum MarkKind implements Coded {
  CLOSED_STOP(1),
  OPEN_STOP(2),
  ADJUSTED(3),
  NOTE(4);

  private final int code;

  MarkKind(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #NOTE}. */
  public static MarkKind of(int code) {
    return Coded.of(values(), code, NOTE);
  }
}
