package tripline.travel;

import java.util.List;
import java.util.Optional;
import tripline.reduce.Movement;
import tripline.reduce.Movement.Move;
import tripline.reduce.Movement.Rest;
import tripline.reduce.Trace;

/**
 * Picks the rest that tells where a motion ended. Noise can cut one rest into several, and a hand
 * pauses shortly before a stop or just after leaving it: rests count as being at one place only
 * within little more than the noise.
 */
final class Rests {
  /** Rests this near to each other are at the same place, turns ... */
  private static final double SAME_TURNS = 0.015;

  /** ... or within this many standard deviations of one reading ... */
  private static final double SAME_NOISE = 2;

  /** ... or within one count: so many standard uncertainties of a rest that shows one count. */
  private static final double SAME_U = 3.5;

  /** A handwheel let go at a stop springs back by less than this, turns (common practice). */
  private static final double SPRING_BACK_TURNS = 0.05;

  private final Trace trace;
  private final double perUnit;
  private final double shift;

  /**
   * @param shift added to the readings of the rests handed out
   */
  Rests(Trace trace, double turnsPerUnit, double shift) {
    this.trace = trace;
    perUnit = Math.abs(turnsPerUnit);
    this.shift = shift;
  }

  /**
   * The longest rest at the furthest reading of a stretch of moves, else the one it sprang back to.
   *
   * @param first first move of the stretch
   * @param last last move of the stretch in its own direction
   * @param furthest furthest reading
   */
  Optional<Rest> ending(Move first, Move last, double furthest) {
    List<Movement> all = trace.movements();
    Optional<Rest> longest = Optional.empty();
    Optional<Rest> after = Optional.empty();
    for (int i = index(first); i < all.size(); i++) {
      if (all.get(i) instanceof Rest rest) {
        if (isAt(furthest, rest)) {
          longest = longer(longest, rest);
        } else if (rest.fromNs() >= last.toNs() && after.isEmpty()) {
          after = Optional.of(rest);
        }
      } else if (all.get(i).fromNs() >= last.toNs() && leaves((Move) all.get(i), last)) {
        break;
      }
    }
    return (longest.isPresent() ? longest : after).map(rest -> shifted(rest, shift));
  }

  /** The longest rest that follows or precedes at the same place as a given one. */
  Rest longestAt(Rest there) {
    List<Movement> all = trace.movements();
    Optional<Rest> longest = Optional.of(there);
    for (int step = -1; step <= 1; step += 2) {
      for (int i = index(there) + step; i >= 0 && i < all.size(); i += step) {
        if (all.get(i) instanceof Rest rest && isAt(there.reading(), rest)) {
          longest = longer(longest, rest);
        } else if (all.get(i) instanceof Rest || travels((Move) all.get(i))) {
          break;
        }
      }
    }
    return shifted(longest.get(), shift);
  }

  /** Movements follow each other: each is known by when it begins. */
  private int index(Movement movement) {
    List<Movement> all = trace.movements();
    int i = 0;
    while (all.get(i).fromNs() != movement.fromNs()) {
      i++;
    }
    return i;
  }

  private static Optional<Rest> longer(Optional<Rest> a, Rest b) {
    return a.isPresent() && lengthNs(a.get()) >= lengthNs(b) ? a : Optional.of(b);
  }

  private static long lengthNs(Rest rest) {
    return rest.toNs() - rest.fromNs();
  }

  private boolean isAt(double reading, Rest rest) {
    double same =
        Math.max(SAME_TURNS / perUnit, Math.max(SAME_NOISE * trace.noise(), SAME_U * rest.u()));
    return Math.abs(rest.reading() - reading) <= same;
  }

  private boolean leaves(Move next, Move last) {
    return Math.abs(next.to() - last.to()) * perUnit >= SPRING_BACK_TURNS;
  }

  private boolean travels(Move move) {
    return Math.abs(move.to() - move.from()) * perUnit >= SPRING_BACK_TURNS;
  }

  private static Rest shifted(Rest rest, double shift) {
    return new Rest(
        rest.fromNs(),
        rest.toNs(),
        rest.reading() + shift,
        rest.u(),
        rest.low() + shift,
        rest.high() + shift,
        rest.grain());
  }
}
