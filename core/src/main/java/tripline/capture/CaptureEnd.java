package tripline.capture;

/**
 * An orderly end.
 *
 * @param reason why
 * @param receivedBytes of the logger in all
 */
public record CaptureEnd(Reason reason, long receivedBytes) {
  /** Why a capture ended. */
  public enum Reason {
    /** The operator, or the one that started the program, wanted it. */
    ASKED(1),
    /** The link failed for good. */
    LINK(2),
    /** The capture was made of another recording. */
    CONVERTED(3);

    private final int code;

    Reason(int code) {
      this.code = code;
    }

    int code() {
      return code;
    }
  }
}
