package tripline.reduce;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import tripline.job.SensorSide;
import tripline.truth.Actuator;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.HandCrank;
import tripline.truth.HandStyle;
import tripline.truth.Logger;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorDrive;
import tripline.truth.MotorPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;
import tripline.truth.Wiring;

/** A valve of the model without contacts, moved and recorded. */
final class Valve {
  static final double SPAN = 12;

  final Actuator actuator;
  final Rng rng;

  Valve(long seed, double startTurns) {
    rng = new Rng(seed);
    ActuatorPlan plan = new ActuatorPlan(SPAN, 0, List.of(), List.of(), Auxiliaries.NONE);
    actuator = new Actuator(plan, startTurns, rng.split("cams"));
  }

  Valve rest(double seconds) {
    actuator.rest(seconds);
    return this;
  }

  Valve by(Consumer<HandCrank> hand, HandStyle style) {
    hand.accept(new HandCrank(actuator, style, rng.split("hand")));
    return this;
  }

  MotorDrive motor(MotorPlan plan) {
    return new MotorDrive(actuator, plan, rng.split("motor"));
  }

  Trace recorded(double rateHz, double resolution, double noise) {
    return recorded(LoggerPlan.plain(rateHz), resolution, noise);
  }

  Trace recorded(LoggerPlan plan, double resolution, double noise) {
    Sensor sensor = Sensor.turns(SensorSide.HANDWHEEL, resolution, noise);
    Feed feed = new Feed(Feed.settings(1, resolution, OptionalDouble.empty(), 1));
    new Logger(plan, sensor)
        .record(
            actuator.path(),
            new Wiring().timeline(actuator, rng.split("bounce")),
            1,
            actuator.marks(),
            rng.split("logger"),
            feed.reduction);
    return feed.trace();
  }

  static List<Movement.Move> moves(Trace trace) {
    return trace.movements().stream()
        .filter(Movement.Move.class::isInstance)
        .map(Movement.Move.class::cast)
        .toList();
  }

  static List<Movement.Rest> rests(Trace trace) {
    return trace.movements().stream()
        .filter(Movement.Rest.class::isInstance)
        .map(Movement.Rest.class::cast)
        .toList();
  }
}
