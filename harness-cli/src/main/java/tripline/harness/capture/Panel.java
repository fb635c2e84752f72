package tripline.harness.capture;

import org.jspecify.annotations.Nullable;
import tripline.harness.terminal.Press;

/** The operator of a capture. */
public interface Panel {
  /** Shows something once; it stays. */
  void say(String text);

  /** Shows how far it is; overwrites what was shown so before. */
  void show(CaptureProgress progress);

  /**
   * What the operator pressed; waits so long for it.
   *
   * @return null if nothing
   */
  @Nullable Press pressed(long waitMs);
}
