package tripline.harness.terminal;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/** What the operator presses, as it is pressed; by the line where standard input is no terminal. */
public final class Keyboard implements AutoCloseable {
  private static final int MOST_WAITING = 64;

  private final BlockingQueue<Press> pressed = new ArrayBlockingQueue<>(MOST_WAITING);
  private final Optional<Terminal> terminal;
  private final KeyReader keys;
  private volatile @Nullable String note;

  private Keyboard(InputStream from, Optional<Terminal> terminal) {
    this.terminal = terminal;
    this.keys =
        new KeyReader(
            terminal.isPresent() ? KeyReader.Manner.KEYS : KeyReader.Manner.LINES, pressed::offer);
    Thread reader = new Thread(() -> read(from), "keyboard");
    reader.setDaemon(true);
    reader.start();
  }

  /** The keyboard of the process: its terminal, or else lines of its standard input. */
  public static Keyboard ofProcess() {
    return new Keyboard(System.in, Terminal.take());
  }

  /** Lines of a stream. */
  public static Keyboard lines(InputStream from) {
    return new Keyboard(from, Optional.empty());
  }

  /** Whether each key comes at once. */
  public boolean givesKeys() {
    return terminal.isPresent();
  }

  private void read(InputStream from) {
    try {
      Reader reader = new InputStreamReader(from, StandardCharsets.UTF_8);
      for (int c = reader.read(); c >= 0; c = reader.read()) {
        keys.accept((char) c);
        note = keys.note();
      }
    } catch (IOException e) {
      note = null;
    }
  }

  /** The note that is being written, or null. */
  public @Nullable String note() {
    return note;
  }

  /** The next press of a keyboard; of none there is none, and only the time passes. */
  public static @Nullable Press awaited(@Nullable Keyboard keyboard, long waitMs) {
    if (keyboard != null) {
      return keyboard.next(waitMs);
    }
    if (waitMs > 0) {
      LockSupport.parkNanos(waitMs * 1_000_000);
    }
    return null;
  }

  /**
   * What was pressed first of what waits; waits so long for it.
   *
   * @return null if nothing was pressed
   */
  public @Nullable Press next(long waitMs) {
    try {
      return pressed.poll(waitMs, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return null;
    }
  }

  /** Gives the terminal back. */
  @Override
  public void close() {
    terminal.ifPresent(Terminal::close);
  }
}
