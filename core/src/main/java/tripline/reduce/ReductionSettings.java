package tripline.reduce;

import java.util.List;
import java.util.OptionalDouble;
import tripline.sample.Channels;

/**
 * What the reduction must know of the job and the logger.
 *
 * @param channels contact channels
 * @param settleNs a contact state has settled once it has held this long, ns, &gt; 0
 * @param skewNs position stamp minus contact stamp, ns
 * @param quantum one count, reading units; 0 = unknown
 * @param modulus the reading wraps here
 * @param turnsPerUnit handwheel turns per unit of reading (for thresholds on motion only)
 * @param delaysNs by channel, how much longer a contact takes to its stamp than the position does,
 *     ns; empty: none does
 */
public record ReductionSettings(
    Channels channels,
    long settleNs,
    long skewNs,
    double quantum,
    OptionalDouble modulus,
    double turnsPerUnit,
    List<Long> delaysNs) {

  /**
   * @throws IllegalArgumentException if there are delays, and not one a channel
   */
  public ReductionSettings {
    delaysNs = List.copyOf(delaysNs);
    if (!delaysNs.isEmpty() && delaysNs.size() != channels.size()) {
      throw new IllegalArgumentException(
          delaysNs.size() + " delays for " + channels.size() + " channels");
    }
  }

  /** Settings of a logger whose inputs take equally long. */
  public ReductionSettings(
      Channels channels,
      long settleNs,
      long skewNs,
      double quantum,
      OptionalDouble modulus,
      double turnsPerUnit) {
    this(channels, settleNs, skewNs, quantum, modulus, turnsPerUnit, List.of());
  }

  /** Position stamp minus stamp of this contact, ns. */
  long skewNs(int channel) {
    return delaysNs.isEmpty() ? skewNs : skewNs - delaysNs.get(channel);
  }
}
