package tripline.harness.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether recordings are given once each and in the order they were made: a position zero that is
 * kept, and what was found before an adjustment, rest on it.
 */
public final class Order {
  private Order() {}

  /** One line, beginning with the file's name, for each that seems out of place. */
  public static List<String> notices(List<RecordingFile> files) {
    List<String> notices = new ArrayList<>();
    Map<String, String> seen = new HashMap<>();
    @Nullable RecordingFile latest = null;
    for (RecordingFile file : files) {
      @Nullable String twin = seen.putIfAbsent(file.sha256(), file.name());
      if (twin != null) {
        notices.add(
            "%s: is the same, byte for byte, as %s: its strokes are counted twice"
                .formatted(file.name(), twin));
        continue;
      }
      if (latest != null && isBefore(file.started(), latest.started())) {
        notices.add(
            "%s: was started before %s, expected recordings in the order they were made"
                .formatted(file.name(), latest.name()));
      }
      latest = file.started().isPresent() ? file : latest;
    }
    return notices;
  }

  private static boolean isBefore(Optional<Instant> one, Optional<Instant> other) {
    return one.isPresent() && other.isPresent() && one.get().isBefore(other.get());
  }
}
