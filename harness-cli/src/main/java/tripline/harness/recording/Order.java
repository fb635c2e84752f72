package tripline.harness.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.reduce.Trace;

/**
 * Whether recordings are given once each and in the order they were made: a position zero that is
 * kept, and what was found before an adjustment, rest on it.
 */
public final class Order {
  private Order() {}

  /** One line, beginning with the file's name, for each that seems out of place. */
  public static List<String> notices(List<RecordingFile> files) {
    List<String> notices = new ArrayList<>();
    List<RecordingFile> seen = new ArrayList<>();
    @Nullable RecordingFile latest = null;
    for (RecordingFile file : files) {
      Optional<RecordingFile> twin = seen.stream().filter(f -> holdsTheSame(f, file)).findFirst();
      if (twin.isPresent()) {
        notices.add(
            "%s: holds the same recording as %s: its strokes are counted twice"
                .formatted(file.name(), twin.get().name()));
        continue;
      }
      seen.add(file);
      if (latest != null && isBefore(file.started(), latest.started())) {
        notices.add(
            "%s: was started before %s, expected recordings in the order they were made"
                .formatted(file.name(), latest.name()));
      }
      latest = file.started().isPresent() ? file : latest;
    }
    return notices;
  }

  /** To the last bit of every change; without changes there is nothing to count twice. */
  private static boolean holdsTheSame(RecordingFile one, RecordingFile other) {
    if (one.traces().size() != other.traces().size()) {
      return false;
    }
    boolean changes = false;
    for (int i = 0; i < one.traces().size(); i++) {
      Trace a = one.traces().get(i).trace();
      Trace b = other.traces().get(i).trace();
      if (a.rows() != b.rows()
          || a.firstNs() != b.firstNs()
          || a.lastNs() != b.lastNs()
          || !a.changes().equals(b.changes())) {
        return false;
      }
      changes |= !a.changes().isEmpty();
    }
    return changes;
  }

  private static boolean isBefore(Optional<Instant> one, Optional<Instant> other) {
    return one.isPresent() && other.isPresent() && one.get().isBefore(other.get());
  }
}
