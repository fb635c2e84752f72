package tripline.job;

import java.util.OptionalDouble;

/**
 * A contact of the development chart.
 *
 * @param name terminal marks, e.g. {@code 21-22} (EN 50013)
 * @param channel the recording's channel that reads it
 * @param cam the cam that moves it
 * @param closed where it is charted closed
 * @param role what it is for
 * @param coversPercent bypass roles: closed from its end for at least this many per cent of span
 */
public record Contact(
    String name,
    String channel,
    String cam,
    ClosedWhere closed,
    Role role,
    OptionalDouble coversPercent) {}
