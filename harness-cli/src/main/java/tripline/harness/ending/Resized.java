package tripline.harness.ending;

import java.util.concurrent.atomic.AtomicBoolean;

/** Whether the terminal changed its size. Where the system has no such signal it never does. */
public final class Resized {
  private final AtomicBoolean resized = new AtomicBoolean();

  private Resized() {}

  /** Begins to listen. */
  public static Resized ofProcess() {
    Resized mine = new Resized();
    Signals.on("WINCH", () -> mine.resized.set(true));
    return mine;
  }

  /** Whether it did since this was last asked. */
  public boolean take() {
    return resized.getAndSet(false);
  }
}
