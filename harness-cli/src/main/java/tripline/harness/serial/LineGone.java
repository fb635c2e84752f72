package tripline.harness.serial;

/** A line was lost: unplugged, closed, or the device stopped taking bytes. */
public final class LineGone extends Exception {
  private final String port;

  /** States what happened, without the port's name. */
  public LineGone(String port, String what) {
    super(what);
    this.port = port;
  }

  /** The port, as the user named it. */
  public String port() {
    return port;
  }

  /** What happened, in a few words. */
  public String what() {
    return String.valueOf(getMessage());
  }
}
