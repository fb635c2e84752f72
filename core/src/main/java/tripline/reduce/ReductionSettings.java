package tripline.reduce;

import java.util.OptionalDouble;
import tripline.sample.Channels;

/**
 * What the reduction must know of the job.
 *
 * @param channels contact channels
 * @param settleNs a contact state has settled once it has held this long, ns, &gt; 0
 * @param skewNs position stamp minus contact stamp, ns
 * @param quantum one count, reading units; 0 = unknown
 * @param modulus the reading wraps here
 * @param turnsPerUnit handwheel turns per unit of reading (for thresholds on motion only)
 */
public record ReductionSettings(
    Channels channels,
    long settleNs,
    long skewNs,
    double quantum,
    OptionalDouble modulus,
    double turnsPerUnit) {}
