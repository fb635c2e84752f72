package tripline.capture;

import java.util.Locale;
import tripline.sample.Mark;

/**
 * What the operator pressed at the host.
 *
 * @param mark its kind
 * @param taken how it is to be read
 * @param text free text, may be empty
 */
public record HostMark(Mark mark, Taken taken, String text) {
  /** What is left of a mark whose place is not known. */
  public String noteText() {
    String word = mark.name().toLowerCase(Locale.ROOT).replace('_', '-');
    String quoted = text.isEmpty() ? "" : " \"" + text + "\"";
    return word + quoted + " pressed while the logger was out of reach";
  }

  /** Who stamps a mark. */
  public enum Taken {
    /** The logger was told, and its own mark is among the bytes received. */
    BY_LOGGER(1),
    /** Nobody else: it belongs between the bytes before and after it. */
    HERE(2),
    /** It reached nobody in time: where the valve stood is not known, so it is a note. */
    TOO_LATE(3);

    private final int code;

    Taken(int code) {
      this.code = code;
    }

    int code() {
      return code;
    }
  }
}
