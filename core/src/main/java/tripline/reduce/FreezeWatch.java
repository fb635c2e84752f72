package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Watches for a reading that stands exactly still where it cannot have. Two signs, either is
 * enough: it was written again and again for a second or more without any of the noise that it
 * shows at rest elsewhere; or it stopped in the middle of a move, contacts changed, and then it
 * jumped to where the valve had gone meanwhile. (A reading that stands still while contacts change
 * and then moves on from there is somebody turning an adjuster.) A logger that writes only changes
 * shows neither: there the jump is a loss of position.
 *
 * <p>Costs a comparison for every reading that differs from the one before.
 */
final class FreezeWatch {
  /** Stretches looked at. */
  static final int MOST = 256;

  /** Shortest stretch that noise should have stirred, ns. */
  private static final long NOISELESS_NS = 1_000_000_000;

  /** Shortest stretch that is looked at where it ends in a jump, ns. */
  static final long LEAST_NS = 200_000_000;

  private static final int LEAST_READINGS = 20;
  private static final long APPROACH_NS = 300_000_000;

  /** Speed before, handwheel turns a second, that makes a stop abrupt. */
  private static final double MOVING_TURNS_PER_S = 0.05;

  private final ReadingRing ring;
  private final double moving;
  private final double jumpLeast;
  private final List<Stretch> stretches = new ArrayList<>();

  private record Stretch(long fromNs, long toNs, double jump, double speedBefore) {
    boolean noiseless(boolean noisyElsewhere) {
      return noisyElsewhere && toNs - fromNs >= NOISELESS_NS;
    }

    boolean holds(Change change) {
      return change.afterNs() > fromNs && change.beforeNs() < toNs;
    }
  }

  FreezeWatch(ReadingRing ring, double turnsPerUnit) {
    this.ring = ring;
    this.moving = MOVING_TURNS_PER_S / Math.abs(turnsPerUnit);
    this.jumpLeast = SlipWatch.LEAST_TURNS / Math.abs(turnsPerUnit);
  }

  /**
   * The newest run of the ring, of {@value #LEAST_NS} ns or more, ends.
   *
   * @param jump step to the reading that follows
   */
  void onHeld(double jump) {
    Stretch stretch = newest(jump);
    boolean worthwhile =
        stretch.toNs - stretch.fromNs >= NOISELESS_NS || Math.abs(jump) > jumpLeast;
    if (worthwhile && dense() && stretches.size() < MOST) {
      stretches.add(stretch);
    }
  }

  private boolean dense() {
    return ring.count(ring.end() - 1) >= LEAST_READINGS;
  }

  private Stretch newest(double jump) {
    long run = ring.end() - 1;
    long fromNs = ring.from(run);
    long before = ring.firstEndingAtOrAfter(fromNs - APPROACH_NS);
    double way = ring.value(run) - ring.value(before);
    double seconds = Math.max(1, fromNs - ring.to(before)) * 1e-9;
    return new Stretch(fromNs, ring.to(run), jump, before < run ? way / seconds : 0);
  }

  /**
   * Stretches that were frozen.
   *
   * @param changes contact changes of the recording
   * @param noisyAtRest elsewhere at rest the reading shows noise of a count or more
   */
  List<ReadingFault> faults(List<Change> changes, boolean noisyAtRest) {
    List<ReadingFault> faults = new ArrayList<>();
    List<Stretch> all = new ArrayList<>(stretches);
    if (ring.end() > 0 && dense()) {
      all.add(newest(0));
    }
    for (Stretch s : all) {
      if (s.noiseless(noisyAtRest) || leftBehind(s, changes)) {
        faults.add(new ReadingFault(ReadingFault.Kind.FROZEN, s.fromNs, s.toNs, s.jump));
      }
    }
    return faults;
  }

  private boolean leftBehind(Stretch s, List<Change> changes) {
    return Math.abs(s.speedBefore) > moving
        && Math.abs(s.jump) > jumpLeast
        && changes.stream().anyMatch(s::holds);
  }

  /** Knows what another one knows. */
  void become(FreezeWatch other) {
    stretches.clear();
    stretches.addAll(other.stretches);
  }
}
