package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;
import tripline.travel.RecordingTrace.Zero;
import tripline.truth.Actuator;
import tripline.truth.ActuatorPlan;
import tripline.truth.HandCrank;
import tripline.truth.HandStyle;
import tripline.truth.MotorDrive;
import tripline.truth.MotorPlan;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/** A recording in the making: an actuator, somebody at its handwheel or its switch, a sensor. */
final class HandJob {
  final Actuator actuator;
  final HandCrank hand;
  final MotorDrive motor;
  final List<PoweredStroke> powered = new ArrayList<>();
  private final Rng rng;

  HandJob(ActuatorPlan plan, double atX, long seed) {
    this(plan, atX, seed, 0);
  }

  /** With hard stops missed by a normal deviate of {@code stopU} at every touch. */
  HandJob(ActuatorPlan plan, double atX, long seed, double stopU) {
    rng = new Rng(seed);
    actuator = new Actuator(plan, atX, rng.split("actuator"));
    hand = new HandCrank(actuator, HandStyle.somebody(rng, stopU), rng.split("hand"));
    motor =
        new MotorDrive(actuator, MotorPlan.steady(0.65).withCoast(0.030, 3, 0.3), rng.split("m"));
    actuator.rest(1);
  }

  HandJob motorTo(End end) {
    powered.add(motor.run(end));
    actuator.rest(2);
    return this;
  }

  /** Closed stop, open stop, closed stop, marked or not. */
  HandJob fullStrokes(boolean marked) {
    hand.toStop(End.CLOSED, marked ? "closed-stop" : "");
    hand.toStop(End.OPEN, marked ? "open-stop" : "");
    hand.toStop(End.CLOSED, marked ? "closed-stop" : "");
    return this;
  }

  RecordingTrace recording(Sensor sensor) {
    return recording(sensor, Zero.LOST, 0, 0);
  }

  RecordingTrace recording(Sensor sensor, Zero zero, double u, long originNs) {
    return new RecordingTrace(
        "recording.csv",
        "",
        powered.isEmpty() ? Drive.HAND : Drive.MOTOR,
        zero,
        IdealTrace.of(actuator, sensor, powered, rng.split("error"), u, originNs));
  }

  static PositionChannel channel(Sensor sensor) {
    return new PositionChannel(
        sensor.side(),
        sensor.turnsPerUnit(),
        sensor.resolution(),
        0,
        0,
        0,
        java.util.OptionalDouble.empty());
  }

  static Development develop(JobSheet sheet, RecordingTrace... recordings) {
    return Explanation.of(List.of(recordings), sheet, Optional.empty());
  }
}
