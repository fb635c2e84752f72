package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.reduce.MarkPoint;
import tripline.reduce.Movement;
import tripline.reduce.Movement.Rest;
import tripline.reduce.Trace;
import tripline.sample.Mark;

/**
 * Hard stops the operator marked: the rest about the mark. A mark pressed on the move belongs to
 * the nearest rest, if that is near in time and travel.
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
          .filter(
              touch ->
                  touches.stream()
                      .noneMatch(t -> t.end() == touch.end() && t.isOfSameRestAs(touch)))
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
    double turnsPerUnit = survey.sheet().position().turnsPerUnit();
    Trace trace = survey.recordings().get(recording).trace();
    Rests rests = new Rests(trace, turnsPerUnit, survey.shift(recording));
    Optional<Rest> nearest = Optional.empty();
    long best = NEAR_NS;
    for (Movement movement : trace.movements()) {
      if (movement instanceof Rest rest) {
        long away =
            Math.max(0, Math.max(rest.fromNs() - mark.timeNs(), mark.timeNs() - rest.toNs()));
        boolean near =
            away == 0
                || !mark.place().known()
                || Math.abs((rest.reading() - mark.place().reading()) * turnsPerUnit) < NEAR_TURNS;
        if (near && away < best) {
          best = away;
          nearest = Optional.of(rest);
        }
      }
    }
    return nearest.map(rests::longestAt);
  }
}
