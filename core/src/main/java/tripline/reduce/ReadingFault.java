package tripline.reduce;

/**
 * Something wrong with the readings themselves.
 *
 * @param kind what
 * @param fromNs begin, ns
 * @param toNs end, ns
 * @param amount size: by how much the reading jumped, reading units (slip, frozen: 0 where it never
 *     went on), or a count (repeated stamps, events left out)
 */
public record ReadingFault(Kind kind, long fromNs, long toNs, double amount) {
  /** Kinds of fault. */
  public enum Kind {
    /** The reading jumped further than the motion around it explains. */
    SLIP,
    /** The reading stood exactly still where it cannot have. */
    FROZEN,
    /** A stamp was repeated with the same cells read again. */
    REPEATED_STAMP,
    /** More contact events than are kept. */
    EVENTS_LEFT_OUT
  }
}
