package tripline.travel;

/**
 * Something that could not be done.
 *
 * @param kind what it is about
 * @param recording recording index, or -1 for all
 * @param message what and why, for the reader
 */
public record Caveat(Kind kind, int recording, String message) {
  /** What could not be done; each has a way of its own to put it right. */
  public enum Kind {
    /** A recording that lost its position zero could not be laid over the others. */
    RECORDING_WITHOUT_PLACE,
    /** The hard stops of an earlier result could not be laid over the recordings. */
    REFERENCE_NOT_USED,
    /** A mark of a stop stands where the valve went on: it was pressed too soon. */
    MARK_NOT_AT_STOP,
    /** Stops stand at each other's place: pressed so, or readings taken the wrong way round. */
    ENDS_EXCHANGED
  }
}
