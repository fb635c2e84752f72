package tripline.reduce;

import java.util.List;

/**
 * Tells whether anything moved about an instant: at rest means well inside a rest, to either side.
 */
final class Stillness {
  private final List<Movement> movements;
  private final long guardNs;

  /**
   * @param guardNs how far inside a rest an instant must lie; with a coarse encoder motion shows
   *     late
   */
  Stillness(List<Movement> movements, long guardNs) {
    this.movements = movements;
    this.guardNs = guardNs;
  }

  Change.Motion at(long timeNs) {
    long first = movements.isEmpty() ? 0 : movements.get(0).fromNs();
    long last = movements.isEmpty() ? 0 : movements.get(movements.size() - 1).toNs();
    for (Movement movement : movements) {
      if (movement instanceof Movement.Rest rest) {
        boolean opens = rest.fromNs() == first && timeNs >= first;
        boolean ends = rest.toNs() == last && timeNs <= last;
        boolean wellAfter = opens || timeNs - rest.fromNs() >= guardNs;
        boolean wellBefore = ends || rest.toNs() - timeNs >= guardNs;
        if (wellAfter && wellBefore) {
          return Change.Motion.AT_REST;
        }
      }
    }
    return Change.Motion.MOVING;
  }
}
