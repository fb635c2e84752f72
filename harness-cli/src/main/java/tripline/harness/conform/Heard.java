package tripline.harness.conform;

import tripline.link.Encoding;
import tripline.link.LinkMessage;

/**
 * A message that was received.
 *
 * @param arrivalNs when its last byte was read, host's clock
 * @param sequence its sequence
 * @param message what it says
 * @param encoding how it came
 * @param afterDelimiter whether a delimiter around nothing stood right before it
 */
record Heard(
    long arrivalNs, int sequence, LinkMessage message, Encoding encoding, boolean afterDelimiter) {}
