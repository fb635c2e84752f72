package tripline.link;

/** What a logger is doing. */
public enum LoggerState implements Coded {
  IDLE(0),
  /** Sampling. */
  RUNNING(1),
  /** Sending a stored recording. */
  SENDING(2);

  private final int code;

  LoggerState(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }

  /** The constant of a code; a code without one counts as {@link #IDLE}. */
  public static LoggerState of(int code) {
    return Coded.of(values(), code, IDLE);
  }
}
