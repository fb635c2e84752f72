package tripline.harness.host;

/** A logger did not answer a command in time, or said what this host cannot follow. */
public final class NoAnswer extends Exception {
  private final String port;

  /** States what was waited for, without the port's name. */
  public NoAnswer(String port, String what) {
    super(what);
    this.port = port;
  }

  /** The port, as the user named it. */
  public String port() {
    return port;
  }

  /** What is wrong, in a few words. */
  public String what() {
    return String.valueOf(getMessage());
  }
}
