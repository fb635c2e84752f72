package tripline.develop;

/**
 * A stretch of travel over which a contact was seen in one state.
 *
 * @param from x at its lower end, turns
 * @param to x at its upper end, turns
 * @param state what was seen
 */
public record Stretch(double from, double to, State state) {
  /** What was seen of a contact over a stretch of travel. */
  public enum State {
    OPEN,
    CLOSED,
    /** Open in some strokes, closed in others. */
    VARIES,
    /** Never travelled in this direction, or never read. */
    UNKNOWN
  }

  /** Whether an x lies in it, ends included. */
  public boolean holds(double x) {
    return from <= x && x <= to;
  }
}
