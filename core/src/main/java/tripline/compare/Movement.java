package tripline.compare;

import java.util.Optional;
import tripline.measure.Estimate;

/**
 * One figure in both results.
 *
 * @param before as it was; empty where not known
 * @param after as it is
 * @param by after less before, with its own uncertainty: what both share has cancelled. Empty where
 *     either is not known, or the two count from different places. Of lost motion and of span it is
 *     found cam by cam ({@code LostMotionMove}) and need not be the difference of the two figures
 * @param seen what may be said of it
 */
public record Movement(
    Optional<Estimate> before, Optional<Estimate> after, Optional<Estimate> by, Seen seen) {
  /** Neither known. */
  static final Movement UNKNOWN = of(Optional.empty(), Optional.empty());

  static Movement of(Optional<Estimate> before, Optional<Estimate> after) {
    return new Movement(before, after, difference(before, after), Seen.NOT_KNOWN);
  }

  private static Optional<Estimate> difference(
      Optional<Estimate> before, Optional<Estimate> after) {
    return before.flatMap(b -> after.map(a -> a.minus(b)));
  }

  /** The same two figures where the later one counts from a place so much further. */
  Movement less(double shift) {
    return new Movement(before, after, by.map(b -> b.plus(-shift)), seen);
  }

  /** The same two figures where their difference means nothing. */
  Movement incomparable() {
    return new Movement(before, after, Optional.empty(), Seen.NOT_KNOWN);
  }

  /** The same two figures where their difference is known better than from them. */
  Movement by(Estimate known) {
    return new Movement(before, after, by.map(b -> known), seen);
  }

  Movement judged(Family family) {
    return new Movement(before, after, by, family.seen(by));
  }

  /** The difference wherever the two count from; empty where either is not known. */
  Optional<Estimate> raw() {
    return difference(before, after);
  }

  /**
   * How often chance alone would move an unmoved figure so far or farther, 0 to 1.
   *
   * @param by a movement
   */
  public static double chance(Estimate by) {
    return Family.chance(by);
  }
}
