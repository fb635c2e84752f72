package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.reduce.Movement;
import tripline.reduce.Movement.Move;
import tripline.reduce.Movement.Rest;
import tripline.reduce.Trace;

/**
 * Joins the moves of one recording into legs: pauses do not end a leg, nor does a small turn back
 * in which no contact changed. An adjustment on the way does.
 */
final class Legs {
  private final Trace trace;
  private final int recording;
  private final double turnsPerUnit;
  private final double shift;
  private final double joinTurns;
  private final List<Adjustment> adjustments;
  private final long[] changesNs;

  /**
   * @param joinTurns turns back shorter than this are joined, turns
   * @param changesNs times of contact changes in travel, ns
   */
  Legs(
      Trace trace,
      int recording,
      double turnsPerUnit,
      double shift,
      double joinTurns,
      List<Adjustment> adjustments,
      long[] changesNs) {
    this.trace = trace;
    this.recording = recording;
    this.turnsPerUnit = turnsPerUnit;
    this.shift = shift;
    this.joinTurns = joinTurns;
    this.adjustments = adjustments;
    this.changesNs = changesNs;
  }

  List<Leg> legs() {
    List<Segment> segments = segments();
    while (joinSmallest(segments)) {
      // each pass joins one
    }
    List<Leg> legs = new ArrayList<>();
    for (int i = 0; i < segments.size(); i++) {
      boolean cut = i + 1 < segments.size() && segments.get(i).sign == segments.get(i + 1).sign;
      legs.add(leg(segments.get(i), legs.size(), cut));
    }
    return legs;
  }

  /** Runs of moves one way within one setting. */
  private List<Segment> segments() {
    List<Segment> segments = new ArrayList<>();
    for (Movement movement : trace.movements()) {
      if (movement instanceof Move move) {
        int setting = setting(move.fromNs());
        Segment last = segments.isEmpty() ? null : segments.get(segments.size() - 1);
        if (last != null && last.sign == move.sign() && last.setting == setting) {
          last.moves.add(move);
        } else {
          segments.add(new Segment(move.sign(), setting, move));
        }
      }
    }
    return segments;
  }

  private int setting(long timeNs) {
    int setting = 0;
    for (Adjustment adjustment : adjustments) {
      setting += adjustment.after(recording, timeNs) ? 0 : 1;
    }
    return setting;
  }

  /** Joins the smallest segment that is no stroke with its neighbours; false if there is none. */
  private boolean joinSmallest(List<Segment> segments) {
    int smallest = -1;
    for (int i = 0; i < segments.size(); i++) {
      if (isSmall(segments.get(i))
          && (smallest < 0 || segments.get(i).extent() < segments.get(smallest).extent())) {
        smallest = i;
      }
    }
    if (smallest < 0) {
      return false;
    }
    Segment small = segments.remove(smallest);
    Segment before = sameSetting(segments, smallest - 1, small);
    Segment after = sameSetting(segments, smallest, small);
    if (before != null) {
      before.moves.addAll(small.moves);
      if (after != null && after.sign == before.sign) {
        before.moves.addAll(after.moves);
        segments.remove(smallest);
      }
    } else if (after != null) {
      after.moves.addAll(0, small.moves);
    }
    return true;
  }

  private static @org.jspecify.annotations.Nullable Segment sameSetting(
      List<Segment> segments, int index, Segment as) {
    boolean there = index >= 0 && index < segments.size();
    return there && segments.get(index).setting == as.setting ? segments.get(index) : null;
  }

  private boolean isSmall(Segment segment) {
    if (segment.extent() * Math.abs(turnsPerUnit) >= joinTurns) {
      return false;
    }
    for (long changeNs : changesNs) {
      if (segment.startNs() <= changeNs && changeNs <= segment.endNs()) {
        return false;
      }
    }
    return true;
  }

  private Leg leg(Segment segment, int number, boolean cut) {
    boolean opening = segment.sign * turnsPerUnit > 0;
    Move last = segment.lastOwn();
    Optional<Rest> rest =
        new Rests(trace, turnsPerUnit, shift)
            .ending(segment.moves.get(0), last, segment.furthest());
    boolean lastOfAll =
        trace.movements().get(trace.movements().size() - 1).fromNs() == last.fromNs();
    long endNs = last.stopping().stood() ? last.stopping().stillNs() : last.toNs();
    return new Leg(
        recording,
        number,
        segment.setting,
        opening ? Direction.OPENING : Direction.CLOSING,
        segment.moves,
        segment.moves.get(0).from() + shift,
        segment.furthest() + shift,
        segment.startNs(),
        endNs,
        last.stopping(),
        rest,
        !cut && !lastOfAll);
  }

  private static final class Segment {
    final int sign;
    final int setting;
    final List<Move> moves = new ArrayList<>();

    Segment(int sign, int setting, Move first) {
      this.sign = sign;
      this.setting = setting;
      moves.add(first);
    }

    double extent() {
      return Math.abs(furthest() - moves.get(0).from());
    }

    double furthest() {
      double furthest = moves.get(0).to();
      for (Move move : moves) {
        double at = move.stopping().stood() ? move.stopping().stillReading() : move.to();
        if (move.sign() == sign && (at - furthest) * sign > 0) {
          furthest = at;
        }
      }
      return furthest;
    }

    long startNs() {
      return moves.get(0).fromNs();
    }

    long endNs() {
      return moves.get(moves.size() - 1).toNs();
    }

    Move lastOwn() {
      for (int i = moves.size() - 1; i >= 0; i--) {
        if (moves.get(i).sign() == sign) {
          return moves.get(i);
        }
      }
      throw new IllegalStateException("a leg without a move of its own direction");
    }
  }
}
