package tripline.harness.serial;

import tripline.harness.failure.LinkFailure;

/** A way to a device: opens a line to it, as often as it is asked. */
public interface Reach {
  /**
   * Opens a new line.
   *
   * @throws LinkFailure if it cannot be opened now
   */
  ByteLine open();
}
