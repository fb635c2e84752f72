package tripline.harness.recording;

import tripline.link.Identity;

/**
 * A logger over the length of a capture: whether position zero is that of the capture before
 * follows from whether it was switched off in between (SPEC §4, session).
 *
 * @param first as it described itself first
 * @param last as it described itself last
 */
public record LoggerPower(Identity first, Identity last) {
  /** Whether it is the logger of the capture before, and has been on since. */
  boolean stayedOnSince(LoggerPower before) {
    return first.session() == before.last.session()
        && first.serial().equals(before.last.serial())
        && first.model().equals(before.last.model());
  }
}
