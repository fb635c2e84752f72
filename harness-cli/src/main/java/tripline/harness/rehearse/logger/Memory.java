package tripline.harness.rehearse.logger;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tripline.link.Fetch;

/** A logger's stored recordings, made when they are first wanted. */
final class Memory {
  private final Supplier<List<StoredRecording>> maker;
  private @Nullable List<StoredRecording> recordings;

  Memory(Supplier<List<StoredRecording>> maker) {
    this.maker = maker;
  }

  List<StoredRecording> all() {
    if (recordings == null) {
      recordings = List.copyOf(maker.get());
    }
    return recordings;
  }

  /** Bytes that a fetch will bring; 0: there is nothing there. */
  long toCome(Fetch fetch) {
    StoredRecording found = find(fetch.id());
    if (found == null || fetch.offset() >= found.length()) {
      return 0;
    }
    long rest = found.length() - fetch.offset();
    return fetch.length() == 0 ? rest : Math.min(rest, fetch.length());
  }

  /** So many bytes of a recording, on their way. */
  Sending send(Fetch fetch, long bytes) {
    StoredRecording found = find(fetch.id());
    if (found == null) {
      throw new IllegalStateException("no recording " + fetch.id());
    }
    int from = (int) fetch.offset();
    return new Sending(found, from, from + (int) bytes);
  }

  private @Nullable StoredRecording find(long id) {
    return all().stream().filter(r -> r.id() == id).findFirst().orElse(null);
  }
}
