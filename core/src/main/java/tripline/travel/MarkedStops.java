package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.reduce.MarkPoint;
import tripline.reduce.Movement;
import tripline.reduce.Movement.Move;
import tripline.reduce.Movement.Rest;
import tripline.reduce.Trace;
import tripline.sample.Mark;

/**
 * Hard stops the operator marked: the rest about the mark, after the handwheel was let go. A mark
 * pressed on the move belongs to the nearest rest, if that is near in time and travel.
 */
final class MarkedStops {
  private static final long NEAR_NS = 5_000_000_000L;
  private static final double NEAR_TURNS = 0.25;

  private MarkedStops() {}

  static List<Touch> of(Survey survey, int recording) {
    Trace trace = survey.recordings().get(recording).trace();
    List<Touch> touches = new ArrayList<>();
    for (MarkPoint mark : trace.marks()) {
      end(mark.mark())
          .flatMap(end -> rest(survey, recording, mark).map(rest -> touch(end, recording, rest)))
          .filter(touch -> !touches.contains(touch))
          .ifPresent(touches::add);
    }
    return touches;
  }

  private static Touch touch(End end, int recording, Rest rest) {
    return new Touch(end, HardStop.Source.MARK, recording, rest);
  }

  private static Optional<End> end(Mark mark) {
    return switch (mark) {
      case CLOSED_STOP -> Optional.of(End.CLOSED);
      case OPEN_STOP -> Optional.of(End.OPEN);
      default -> Optional.empty();
    };
  }

  private static Optional<Rest> rest(Survey survey, int recording, MarkPoint mark) {
    double turnsPerUnit = Math.abs(survey.sheet().position().turnsPerUnit());
    double shift = survey.frames().shift(recording);
    List<Movement> all = survey.recordings().get(recording).trace().movements();
    int nearest = -1;
    long best = NEAR_NS;
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i) instanceof Rest rest) {
        long away =
            Math.max(0, Math.max(rest.fromNs() - mark.timeNs(), mark.timeNs() - rest.toNs()));
        boolean near =
            away == 0
                || !mark.place().known()
                || Math.abs(rest.reading() - mark.place().reading()) * turnsPerUnit < NEAR_TURNS;
        if (near && away < best) {
          best = away;
          nearest = i;
        }
      }
    }
    return nearest < 0 ? Optional.empty() : Optional.of(letGo(all, nearest, turnsPerUnit, shift));
  }

  /** The last of the rests that follow with next to no travel between. */
  private static Rest letGo(List<Movement> all, int index, double turnsPerUnit, double shift) {
    Rest pressed = (Rest) all.get(index);
    Rest found = pressed;
    for (int i = index + 1; i < all.size(); i++) {
      if (all.get(i) instanceof Rest rest) {
        found = rest;
      } else if (Math.abs(((Move) all.get(i)).to() - pressed.reading()) * turnsPerUnit
          >= Legs.SPRING_BACK_TURNS) {
        break;
      }
    }
    return Legs.shifted(found, shift);
  }
}
