package tripline.assess;

import java.util.OptionalDouble;
import tripline.develop.Development;

/**
 * How long a channel's changes took to settle.
 *
 * @param worstS first to last edge of the longest burst, s; empty if it never changed
 * @param certainS the longest burst less what sampling may have added to it, s
 */
record Settling(OptionalDouble worstS, double certainS) {
  static Settling of(Development development, int setting, int channel) {
    double worst = -1;
    double certain = 0;
    Flutter flutter = new Flutter(development);
    for (Burst burst : Burst.of(development.trips(channel, setting))) {
      long lengthNs = flutter.lengthNs(burst);
      worst = Math.max(worst, lengthNs * 1e-9);
      certain = Math.max(certain, (lengthNs - burst.first().change().gapNs()) * 1e-9);
    }
    return new Settling(worst < 0 ? OptionalDouble.empty() : OptionalDouble.of(worst), certain);
  }
}
