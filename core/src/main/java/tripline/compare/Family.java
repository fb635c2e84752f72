package tripline.compare;

import java.util.Optional;
import java.util.stream.Stream;
import tripline.measure.Coverage;
import tripline.measure.Estimate;

/**
 * Figures that are looked at together. Of twenty unmoved figures one lies outside its 95 % interval
 * by chance; for one family in twenty to show a movement that is none, each of its figures must be
 * surprising at 5 % divided by their number (Bonferroni's inequality, which holds whatever errors
 * they share).
 *
 * @param figures how many are compared, at least 0
 * @param can whether anything can have moved: not within one measurement
 */
public record Family(int figures, boolean can) {
  /** Chance that a family in which nothing moved shows a movement. */
  public static final double FALSE_ALARM = 0.05;

  /** Less than any sensor tells, more than the rounding of figures in two files. */
  private static final double LEAST_TURNS = 1e-6;

  static Family of(Stream<Movement> moves, int more, Kinship kinship) {
    int known = (int) moves.filter(m -> m.by().isPresent()).count();
    return new Family(known + more, kinship.of() != Kinship.Of.SAME_MEASUREMENT);
  }

  /** What a figure's chance must be below to say that it moved. */
  public double level() {
    return FALSE_ALARM / Math.max(1, figures);
  }

  /** So many standard uncertainties of a normal law that is. */
  public double factor() {
    return Coverage.of(1).factor(1 - level());
  }

  /** What may be said of a figure of this family. */
  Seen seen(Optional<Estimate> by) {
    return by.map(b -> isMoved(b) ? Seen.MOVED : Seen.NO_MOVE).orElse(Seen.NOT_KNOWN);
  }

  boolean isMoved(Estimate by) {
    return can && chance(by) < level();
  }

  /** Chance of an error at least as large as this, of either sign. */
  static double chance(Estimate by) {
    if (Math.abs(by.value()) < LEAST_TURNS) {
      return 1;
    }
    return by.u() == 0 ? 0 : 1 - by.coverage().probability(Math.abs(by.value()));
  }
}
