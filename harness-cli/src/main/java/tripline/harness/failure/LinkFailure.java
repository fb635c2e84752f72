package tripline.harness.failure;

/** The link to the logger failed: exit status 5. */
public final class LinkFailure extends RuntimeException {
  /** States the port and what happened on it, on one line. */
  public LinkFailure(String port, String problem) {
    super(port + ": " + problem);
  }
}
