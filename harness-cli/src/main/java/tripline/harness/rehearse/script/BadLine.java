package tripline.harness.rehearse.script;

/** A line that says nothing that can be done. */
public final class BadLine extends Exception {
  /** What is wrong and what was expected, on one line. */
  public BadLine(String problem) {
    super(problem);
  }

  /** What is wrong and what was expected, on one line. */
  public String problem() {
    return String.valueOf(getMessage());
  }
}
