package tripline.link;

/** How a command went. */
public enum Result implements Coded {
  DONE(0),
  /** Not in this state. */
  NOT_NOW(1),
  /** No such ability. */
  NOT_FITTED(2),
  BAD_VALUE(3),
  /** Ask again. */
  BUSY(4),
  FAILED(5),
  /** No such command. */
  NOT_KNOWN(6);

  private final int code;

  Result(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #FAILED}. */
  public static Result of(int code) {
    return Coded.of(values(), code, FAILED);
  }
}
