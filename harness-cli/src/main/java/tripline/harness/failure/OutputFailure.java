package tripline.harness.failure;

/** An answer could not be written where it was wanted: exit status 6. */
public final class OutputFailure extends RuntimeException {
  /** States the file (or stream) and why it refused, on one line. */
  public OutputFailure(String file, String problem) {
    super(file + ": " + problem);
  }
}
