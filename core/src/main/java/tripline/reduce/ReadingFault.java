package tripline.reduce;

/**
 * Something wrong with the readings themselves.
 *
 * @param kind what
 * @param fromNs begin, ns
 * @param toNs end, ns
 * @param amount size, reading units (slip), or count of rows (repeated stamps)
 */
public record ReadingFault(Kind kind, long fromNs, long toNs, double amount) {
  /** Kinds of fault. */
  public enum Kind {
    /** The reading jumped further than the motion around it explains. */
    SLIP,
    /** The reading stood still while contacts went through their changes. */
    FROZEN,
    /** A stamp was repeated with the same cells read again. */
    REPEATED_STAMP
  }
}
