package tripline.reduce;

import java.util.List;

/**
 * Tells whether anything moved about an instant: at rest means well inside a rest, to either side.
 * With a coarse encoder motion shows late, so that well inside takes its time; where the operator
 * says that he has turned an adjuster, a contact that changed in the rest he says it in changed at
 * rest, however soon he went on.
 */
final class Stillness {
  /** After this nothing of the motion before is left, if somebody says that he stood still, ns. */
  private static final long STOOD_NS = 400_000_000;

  private final List<Movement> movements;
  private final long guardNs;
  private final long[] adjustedNs;

  /**
   * @param guardNs how far inside a rest an instant must lie; with a coarse encoder motion shows
   *     late
   * @param adjustedNs when the operator said that he has turned an adjuster
   */
  Stillness(List<Movement> movements, long guardNs, long... adjustedNs) {
    this.movements = movements;
    this.guardNs = guardNs;
    this.adjustedNs = adjustedNs;
  }

  Change.Motion at(long timeNs) {
    for (int i = 0; i < movements.size(); i++) {
      if (movements.get(i) instanceof Movement.Rest rest
          && (isWellInside(rest, timeNs) || isVouchedFor(i, rest, timeNs))) {
        return Change.Motion.AT_REST;
      }
    }
    return Change.Motion.MOVING;
  }

  private boolean isWellInside(Movement.Rest rest, long timeNs) {
    boolean ends =
        rest.toNs() == movements.get(movements.size() - 1).toNs() && timeNs <= rest.toNs();
    return isAfter(rest, timeNs, guardNs) && (ends || rest.toNs() - timeNs >= guardNs);
  }

  private boolean isAfter(Movement.Rest rest, long timeNs, long byNs) {
    boolean opens = rest.fromNs() == movements.get(0).fromNs() && timeNs >= rest.fromNs();
    return opens || timeNs - rest.fromNs() >= byNs;
  }

  /** Said in the rest after the instant, or on the move that follows it. */
  private boolean isVouchedFor(int index, Movement.Rest rest, long timeNs) {
    if (timeNs > rest.toNs() || !isAfter(rest, timeNs, Math.min(STOOD_NS, guardNs))) {
      return false;
    }
    boolean moves =
        index + 1 < movements.size() && movements.get(index + 1) instanceof Movement.Move;
    long untilNs = moves ? movements.get(index + 1).toNs() : rest.toNs();
    for (long said : adjustedNs) {
      if (said >= timeNs && said <= untilNs) {
        return true;
      }
    }
    return false;
  }
}
