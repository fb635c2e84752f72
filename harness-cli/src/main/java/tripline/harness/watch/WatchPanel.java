package tripline.harness.watch;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import tripline.harness.capture.CaptureProgress;
import tripline.harness.capture.Panel;
import tripline.harness.report.SafeText;
import tripline.harness.terminal.Keyboard;
import tripline.harness.terminal.Press;

/** The operator of a watch: what he presses, and what he is told besides the view itself. */
final class WatchPanel implements Panel, AutoCloseable {
  /** So long a message stands on the screen, ns. */
  private static final long MESSAGE_NS = 6_000_000_000L;

  private final @Nullable Keyboard keyboard;
  private final @Nullable PrintWriter errors;
  private volatile @Nullable CaptureProgress progress;
  private volatile String message = "";
  private volatile long messageNs;

  /**
   * @param errors where messages go if there is no screen to show them on
   */
  WatchPanel(@Nullable Keyboard keyboard, @Nullable PrintWriter errors) {
    this.keyboard = keyboard;
    this.errors = errors;
  }

  @Override
  public void say(String text) {
    if (errors == null) {
      message = text;
      messageNs = System.nanoTime();
    } else {
      errors.println(SafeText.line(text));
      errors.flush();
    }
  }

  @Override
  public void show(CaptureProgress now) {
    progress = now;
  }

  @Override
  public @Nullable Press pressed(long waitMs) {
    return Keyboard.awaited(keyboard, waitMs);
  }

  /** How far the capture is; null before it began. */
  @Nullable CaptureProgress progress() {
    return progress;
  }

  /** The note that is being written, else what was said lately, else nothing. */
  String message() {
    String note = keyboard == null ? null : keyboard.note();
    if (note != null) {
      return "note: " + note + "_";
    }
    return System.nanoTime() - messageNs < MESSAGE_NS ? message : "";
  }

  @Override
  public void close() {
    if (keyboard != null) {
      keyboard.close();
    }
  }
}
