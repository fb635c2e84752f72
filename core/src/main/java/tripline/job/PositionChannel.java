package tripline.job;

import java.util.OptionalDouble;

/**
 * The logger's position channel.
 *
 * @param side where the sensor sits
 * @param turnsPerUnit handwheel turns per unit of reading, not 0; negative: the reading falls while
 *     opening
 * @param resolution one count, in units of the reading; 0 = unknown, estimated from the recording
 * @param scaleU relative standard uncertainty of {@code turnsPerUnit}
 * @param skewNs position stamp minus contact stamp, ns
 * @param skewUNs standard uncertainty of the skew, ns
 * @param modulus the reading wraps here, in units of the reading
 */
public record PositionChannel(
    SensorSide side,
    double turnsPerUnit,
    double resolution,
    double scaleU,
    long skewNs,
    long skewUNs,
    OptionalDouble modulus) {}
