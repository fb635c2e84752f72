package tripline.harness.watch;

import java.io.IOException;
import java.util.function.Supplier;
import tripline.harness.ending.Resized;
import tripline.harness.report.Glyphs;
import tripline.harness.terminal.TerminalSize;

/**
 * Draws a view over and over, on a thread of its own: as soon as something happened, and at least
 * twenty times a second.
 */
final class Drawing implements AutoCloseable {
  private static final long USUAL_NS = 50_000_000L;

  /** Fewer than this apart nobody sees two frames, and a slow terminal is spared. */
  private static final long LEAST_NS = 12_000_000L;

  private final Screen screen;
  private final Supplier<View> views;
  private final Glyphs glyphs;
  private final Resized resized;
  private final Thread thread = new Thread(this::run, "draw");
  private TerminalSize size = TerminalSize.ofProcess();
  private boolean awake;
  private boolean ended;
  private volatile boolean gone;
  private final Fault fault = new Fault();

  /**
   * @param views asked for one each time, on this thread
   */
  Drawing(Screen screen, Supplier<View> views, Glyphs glyphs, Resized resized) {
    this.screen = screen;
    this.views = views;
    this.glyphs = glyphs;
    this.resized = resized;
    thread.setDaemon(true);
    thread.start();
  }

  /** Something happened that should be seen. */
  synchronized void wake() {
    awake = true;
    notifyAll();
  }

  /** Whether the terminal is gone. */
  boolean isGone() {
    return gone;
  }

  /**
   * Throws what went wrong, if anything did.
   *
   * @throws RuntimeException a fault of the program
   */
  void check() {
    fault.check();
  }

  private void run() {
    try {
      while (await()) {
        if (resized.take()) {
          size = TerminalSize.ofProcess();
          screen.forget();
        }
        screen.draw(Frame.of(views.get(), size, glyphs));
      }
    } catch (IOException e) {
      gone = true;
    } catch (RuntimeException e) {
      fault.keep(e);
    }
  }

  /** Waits until it is time to draw; false: no more. */
  private synchronized boolean await() {
    long startNs = System.nanoTime();
    try {
      for (long passed = 0; !ended && passed < (awake ? LEAST_NS : USUAL_NS); ) {
        long left = (awake ? LEAST_NS : USUAL_NS) - passed;
        wait(Math.max(1, left / 1_000_000));
        passed = System.nanoTime() - startNs;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      ended = true;
    }
    awake = false;
    return !ended;
  }

  /** Ends the drawing and gives the terminal back. */
  @Override
  public void close() {
    synchronized (this) {
      ended = true;
      notifyAll();
    }
    Threads.join(thread);
    try {
      screen.close();
    } catch (IOException e) {
      gone = true;
    }
  }
}
