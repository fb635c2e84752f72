package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import tripline.job.JobSheet;
import tripline.reduce.Change;
import tripline.reduce.MarkPoint;
import tripline.reduce.Movement;
import tripline.reduce.Trace;
import tripline.sample.Mark;

/**
 * Finds where adjusters were turned: a position contact that changed at rest, the operator's mark,
 * or a contact found in another state at the begin of a recording than the one before left it in at
 * the same position. Several of these with no travel between them are one session at the adjusters,
 * and one new setting. A contact that goes and comes back within {@value #FLICKER_NS} ns at rest is
 * a loose wire, not an adjustment.
 */
final class Adjustments {
  /** Movement below this share of a turn is not travel, turns. */
  static final double LEAST_TRAVEL_TURNS = 0.05;

  private static final long FLICKER_NS = 500_000_000L;

  private enum Kind {
    ADJUSTED,
    TRAVELLED
  }

  private record Event(long timeNs, Kind kind) {
    static int inOrder(Event a, Event b) {
      int time = Long.compare(a.timeNs, b.timeNs);
      return time != 0 ? time : a.kind.compareTo(b.kind);
    }
  }

  private final JobSheet sheet;
  private final SheetChannels channels;
  private final List<Adjustment> found = new ArrayList<>();
  private boolean travelled;

  private Adjustments(JobSheet sheet) {
    this.sheet = sheet;
    channels = new SheetChannels(sheet);
  }

  static List<Adjustment> of(List<RecordingTrace> recordings, JobSheet sheet) {
    Adjustments adjustments = new Adjustments(sheet);
    for (int r = 0; r < recordings.size(); r++) {
      List<Event> events = adjustments.events(recordings.get(r).trace());
      if (r > 0
          && recordings.get(r).zero() == RecordingTrace.Zero.KEPT
          && adjustments.changedBetween(recordings.get(r - 1).trace(), recordings.get(r).trace())) {
        events.add(new Event(recordings.get(r).trace().firstNs(), Kind.ADJUSTED));
      }
      adjustments.fold(r, events);
    }
    return List.copyOf(adjustments.found);
  }

  private void fold(int recording, List<Event> events) {
    events.sort(Event::inOrder);
    for (Event event : events) {
      if (event.kind() == Kind.ADJUSTED && travelled) {
        found.add(new Adjustment(recording, event.timeNs()));
      }
      travelled = event.kind() == Kind.TRAVELLED;
    }
  }

  private List<Event> events(Trace trace) {
    List<Event> events = new ArrayList<>();
    for (Movement movement : trace.movements()) {
      if (movement instanceof Movement.Move move && turns(move) >= LEAST_TRAVEL_TURNS) {
        events.add(new Event(move.fromNs(), Kind.TRAVELLED));
      }
    }
    for (Change change : trace.changes()) {
      if (isPosition(trace, change)) {
        if (change.motion() == Change.Motion.MOVING) {
          events.add(new Event(change.timeNs(), Kind.TRAVELLED));
        } else if (change.motion() == Change.Motion.AT_REST && !flickers(trace, change)) {
          events.add(new Event(change.timeNs(), Kind.ADJUSTED));
        }
      }
    }
    for (MarkPoint mark : trace.marks()) {
      if (mark.mark() == Mark.ADJUSTED) {
        events.add(new Event(restBefore(trace, mark.timeNs()), Kind.ADJUSTED));
      }
    }
    return events;
  }

  private double turns(Movement.Move move) {
    return Math.abs(move.to() - move.from()) * Math.abs(sheet.position().turnsPerUnit());
  }

  private boolean isPosition(Trace trace, Change change) {
    int channel = channels.fromTrace(trace.channels(), change.channel());
    return channel >= 0 && channels.contact(channel).isPresent();
  }

  private static boolean flickers(Trace trace, Change change) {
    return trace.changes().stream()
        .anyMatch(
            other ->
                other.channel() == change.channel()
                    && other.motion() == Change.Motion.AT_REST
                    && other.to() != change.to()
                    && Math.abs(other.timeNs() - change.timeNs()) <= FLICKER_NS);
  }

  /** A mark pressed on the move belongs to the rest before that move. */
  private static long restBefore(Trace trace, long timeNs) {
    for (Movement movement : trace.movements()) {
      if (movement instanceof Movement.Move
          && movement.fromNs() <= timeNs
          && timeNs <= movement.toNs()) {
        return movement.fromNs();
      }
    }
    return timeNs;
  }

  private boolean changedBetween(Trace before, Trace after) {
    double moved =
        Math.abs(ZeroFrames.firstReading(after) - ZeroFrames.lastReading(before))
            * Math.abs(sheet.position().turnsPerUnit());
    if (!(moved < LEAST_TRAVEL_TURNS) || !before.channels().equals(after.channels())) {
      return false;
    }
    long both = before.end().known() & after.start().known();
    long differ = (before.end().closed() ^ after.start().closed()) & both;
    for (int c = 0; c < after.channels().size(); c++) {
      int channel = channels.fromTrace(after.channels(), c);
      if ((differ >> c & 1) != 0 && channel >= 0 && channels.contact(channel).isPresent()) {
        return true;
      }
    }
    return false;
  }
}
