package tripline.harness.summary;

import org.jspecify.annotations.Nullable;

/**
 * What a summary keeps of one end of a valve.
 *
 * @param backoff from the hard stop to where the end's limit contact changes
 * @param target what the sheet asked for, turns
 * @param rejected whether the backoff was rejected
 * @param margin what was left to the stop under power
 */
record EndLine(
    @Nullable Figure backoff, @Nullable Double target, boolean rejected, @Nullable Figure margin) {

  /** Nothing is known. */
  static final EndLine NONE = new EndLine(null, null, false, null);

  /**
   * Whether the end was set anew between an earlier result and this one, as far as they can tell:
   * the sheet asked for something else, or what had been rejected has come nearer to its target,
   * beyond the 95 % interval of the difference.
   */
  boolean setAnewSince(EndLine earlier) {
    if (target != null && earlier.target != null && !target.equals(earlier.target)) {
      return true;
    }
    return backoff != null
        && target != null
        && earlier.backoff != null
        && earlier.rejected
        && earlier.backoff.to(backoff).isSignificant()
        && backoff.distance(target) < earlier.backoff.distance(target);
  }
}
