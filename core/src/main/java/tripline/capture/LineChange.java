package tripline.capture;

/**
 * The line was opened, lost or closed.
 *
 * @param event which
 * @param cause of a loss
 * @param utcMicros microseconds since 1970 by the host's clock; 0 unknown
 * @param text in words
 */
public record LineChange(Event event, Cause cause, long utcMicros, String text) {
  /** What became of the line. */
  public enum Event {
    OPENED(1),
    LOST(2),
    CLOSED(3);

    private final int code;

    Event(int code) {
      this.code = code;
    }

    int code() {
      return code;
    }
  }

  /** Why a line was lost. */
  public enum Cause {
    /** It was not. */
    NONE(0),
    UNPLUGGED(1),
    /** Nothing came for too long, though the logger samples. */
    SILENT(2),
    /** The logger took no bytes, or did not answer. */
    NO_ANSWER(3);

    private final int code;

    Cause(int code) {
      this.code = code;
    }

    int code() {
      return code;
    }
  }
}
