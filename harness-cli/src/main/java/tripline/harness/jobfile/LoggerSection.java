package tripline.harness.jobfile;

import java.util.Map;
import java.util.OptionalDouble;
import tripline.job.PositionChannel;
import tripline.job.SensorSide;

/** {@code [position]} and {@code [logger]}: how the logger sees the actuator. */
final class LoggerSection {
  private static final Map<String, SensorSide> SIDES =
      Words.inOrder("handwheel", SensorSide.HANDWHEEL, "drive", SensorSide.DRIVE);
  private static final Range SCALE = Range.from(-1e6, 1e6, "turns a unit");
  private static final Range READING = Range.from(0, 1e9, "units of the reading");
  private static final Range MODULUS = Range.above(0, 1e9, "units of the reading");
  private static final Range SCALE_U = Range.from(0, 0.5, "");
  private static final Range SKEW = Range.from(-10, 10, "s");
  private static final Range SKEW_U = Range.from(0, 10, "s");
  private static final Range SETTLE = Range.from(1e-6, 10, "s");
  private static final double USUAL_SETTLE_S = 0.010;

  private LoggerSection() {}

  static PositionChannel position(Section position, Notes notes) {
    if (!position.has("side")) {
      notes.assumed(
          position.path("side"),
          "position.side is not stated: the sensor is taken to sit on the handwheel");
    }
    if (!position.has("turns_per_unit")) {
      notes.assumed(
          position.path("turns_per_unit"),
          "position.turns_per_unit is not stated: the reading is taken to be in turns");
    }
    PositionChannel channel =
        new PositionChannel(
            position.choice("side", SIDES).orElse(SensorSide.HANDWHEEL),
            turnsPerUnit(position),
            position.number("resolution", READING, 0),
            position.number("scale_u", SCALE_U, 0),
            nanoseconds(position.number("skew_s", SKEW, 0)),
            nanoseconds(position.number("skew_u_s", SKEW_U, 0)),
            position.number("modulus", MODULUS));
    position.close();
    return channel;
  }

  private static double turnsPerUnit(Section position) {
    OptionalDouble scale = position.number("turns_per_unit", SCALE);
    if (scale.isPresent() && Math.abs(scale.getAsDouble()) < 1e-9) {
      position.wrong(
          "turns_per_unit",
          Values.shown(scale.getAsDouble()),
          "at least 0.000000001 turns a unit; negative where the reading falls while opening");
      return 1;
    }
    return scale.orElse(1);
  }

  static long settleNs(Section logger) {
    double settleS = logger.number("settle_s", SETTLE, USUAL_SETTLE_S);
    logger.close();
    return nanoseconds(settleS);
  }

  private static long nanoseconds(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
