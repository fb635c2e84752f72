package tripline.travel;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.reduce.Change;
import tripline.reduce.Trace;
import tripline.sample.ContactState;

/** When the contactors of the motor were in, by their auxiliary contacts. */
public final class Contactors {
  private final Set<End> read = EnumSet.noneOf(End.class);
  private final List<In> stretches = new ArrayList<>();

  private record In(long fromNs, long toNs) {}

  private Contactors() {}

  /** As one recording saw them. */
  public static Contactors of(Trace trace, JobSheet sheet) {
    Contactors contactors = new Contactors();
    for (End end : End.values()) {
      sheet
          .motor(end)
          .map(trace.channels()::indexOf)
          .filter(channel -> channel >= 0)
          .ifPresent(channel -> contactors.add(trace, end, channel));
    }
    return contactors;
  }

  private void add(Trace trace, End end, int channel) {
    long bit = 1L << channel;
    List<Change> changes = trace.changes().stream().filter(c -> c.channel() == channel).toList();
    if (changes.isEmpty() && ((trace.start().known() | trace.end().known()) & bit) == 0) {
      return;
    }
    read.add(end);
    boolean closed =
        changes.isEmpty()
            ? ((trace.start().closed() | trace.end().closed()) & bit) != 0
            : changes.get(0).to() == ContactState.OPEN;
    long sinceNs = trace.firstNs();
    for (Change change : changes) {
      if (closed && change.to() == ContactState.OPEN) {
        stretches.add(new In(sinceNs, change.timeNs()));
      }
      closed = change.to() == ContactState.CLOSED;
      sinceNs = change.timeNs();
    }
    if (closed) {
      stretches.add(new In(sinceNs, trace.lastNs()));
    }
  }

  /** Whether those of both ends were read, so that a motor that ran was seen. */
  public boolean tellAll() {
    return read.size() == End.values().length;
  }

  /** Whether one was ever in. */
  public boolean everIn() {
    return !stretches.isEmpty();
  }

  /**
   * Whether one was in at some time between two others, ns; empty where none was and the one of the
   * end was not read.
   */
  Optional<Boolean> wereIn(End toward, long fromNs, long toNs) {
    boolean in = stretches.stream().anyMatch(s -> s.fromNs() < toNs && s.toNs() > fromNs);
    return in || read.contains(toward) ? Optional.of(in) : Optional.empty();
  }
}
