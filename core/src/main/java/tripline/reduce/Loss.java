package tripline.reduce;

/**
 * A stretch with samples missing.
 *
 * @param fromNs last time before, ns
 * @param toNs first time after, ns
 * @param samples how many, or -1
 * @param what rows lost altogether, or position readings only
 * @param moved by how much the reading moved across it; NaN where unknown
 */
public record Loss(long fromNs, long toNs, long samples, What what, double moved) {
  /** What is missing. */
  public enum What {
    ROWS,
    POSITION
  }
}
