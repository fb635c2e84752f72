package tripline.harness.rehearse;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Lines that come while a rehearsal goes on, read by a daemon thread. */
public final class LineSource {
  /** When a line is done. */
  public enum When {
    /** Somebody types: at once. */
    AT_ONCE,
    /** A program writes: when the line before is over. */
    IN_TURN
  }

  private final When when;
  private final ConcurrentLinkedQueue<String> lines = new ConcurrentLinkedQueue<>();
  private volatile boolean ended;

  private LineSource(When when) {
    this.when = when;
  }

  /** No lines at all. */
  public static LineSource none() {
    LineSource source = new LineSource(When.IN_TURN);
    source.ended = true;
    return source;
  }

  /** The lines of a reader. */
  public static LineSource of(BufferedReader reader, When when) {
    LineSource source = new LineSource(when);
    Thread thread = new Thread(() -> source.readAll(reader), "reads lines");
    thread.setDaemon(true);
    thread.start();
    return source;
  }

  /** A stream that breaks has ended. */
  private void readAll(BufferedReader reader) {
    try {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        lines.add(line);
      }
    } catch (IOException e) {
      lines.add("quit");
    }
    ended = true;
  }

  When when() {
    return when;
  }

  Optional<String> poll() {
    return Optional.ofNullable(lines.poll());
  }

  /** Whether no line will come any more. */
  boolean ended() {
    return ended && lines.isEmpty();
  }
}
