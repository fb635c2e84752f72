package tripline.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.Seat;
import tripline.sample.Drive;
import tripline.truth.Actuator;
import tripline.truth.ActuatorPlan;
import tripline.truth.HandCrank;
import tripline.truth.HandStyle;
import tripline.truth.Logger;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorDrive;
import tripline.truth.MotorPlan;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;
import tripline.truth.Sensor;
import tripline.truth.Wiring;

/** A valve on site with its sheet: actuator, sensor and logger, recorded stroke by stroke. */
public final class Site {
  private final JobSheet sheet;
  private final Sensor sensor;
  private final long seed;
  private final Rng rng;
  private final List<Recording> recordings = new ArrayList<>();
  private ActuatorPlan plan;
  private LoggerPlan logger = LoggerPlan.plain(100);
  private double stopU;
  private Consumer<Loose> loose = l -> {};
  private Actuator actuator;

  /** What a case may do to the wires once the strokes are known. */
  public record Loose(Wiring wiring, Actuator actuator, Rng rng) {}

  public Site(Chart chart, Sensor sensor, double spanTurns, double lostMotion, long seed) {
    sheet = chart.sheet();
    this.sensor = sensor;
    this.seed = seed;
    rng = new Rng(seed);
    stopU = sheet.closed().stopUTurns();
    plan = Built.to(sheet, spanTurns, lostMotion, rng.split("built"));
  }

  public JobSheet sheet() {
    return sheet;
  }

  public ActuatorPlan plan() {
    return plan;
  }

  public List<Recording> recordings() {
    return List.copyOf(recordings);
  }

  public Site built(UnaryOperator<ActuatorPlan> change) {
    plan = change.apply(plan);
    return this;
  }

  public Site logger(LoggerPlan other) {
    logger = other;
    return this;
  }

  public Site wires(Consumer<Loose> what) {
    loose = what;
    return this;
  }

  /** A hand recording; begins at {@code x} if it is the first. */
  public Site byHand(String file, double x, Consumer<Hand> script) {
    hand(x, script);
    keep(file, Drive.HAND, recordings.isEmpty() ? "" : "kept", sensor, List.of(), Optional.empty());
    return this;
  }

  /** The same, recorded live over a cable, as a capture. */
  public Site byHandOver(Cable cable, String file, double x, Consumer<Hand> script) {
    hand(x, script);
    keep(file, Drive.HAND, "", sensor, List.of(), Optional.of(cable));
    return this;
  }

  private void hand(double x, Consumer<Hand> script) {
    begin(x);
    HandStyle style =
        HandStyle.somebody(rng.split("style"), stopU).withRunSpeed(rng.uniform(0.55, 0.8));
    HandCrank crank = new HandCrank(actuator, style.withPauses(5, 0.15), rng.split("hand"));
    actuator.rest(0.8);
    script.accept(new Hand(crank, actuator));
    actuator.rest(0.5);
  }

  /** A technician and what he works on. */
  public record Hand(HandCrank crank, Actuator actuator) {}

  /** A motor recording; begins at {@code x} if it is the first. */
  public Site byMotor(String file, double x, MotorPlan motor, Consumer<Motor> script) {
    return byMotor(file, x, motor, recordings.isEmpty() ? "" : "kept", sensor, script);
  }

  /** A motor recording whose position zero is that of another sensor set-up. */
  public Site byMotor(
      String file, double x, MotorPlan motor, String zero, Sensor other, Consumer<Motor> script) {
    begin(x);
    List<PoweredStroke> strokes = new ArrayList<>();
    MotorDrive drive = new MotorDrive(actuator, motor, rng.split("motor"));
    for (End end : End.values()) {
      if (sheet.end(end).seat() == Seat.TORQUE) {
        drive.seatsOnTorque(end);
      }
    }
    actuator.rest(0.8);
    script.accept(new Motor(drive, actuator, strokes));
    actuator.rest(0.8);
    keep(file, Drive.MOTOR, zero, other, strokes, Optional.empty());
    return this;
  }

  /** A drive, what it moves, and the strokes it made. */
  public record Motor(MotorDrive drive, Actuator actuator, List<PoweredStroke> strokes) {
    public void run(End toward) {
      strokes.add(drive.run(toward));
      actuator.rest(1.2);
    }

    public void run(End toward, double untilX, PoweredStroke.Cause cause) {
      strokes.add(drive.run(toward, untilX, cause));
      actuator.rest(1.2);
    }
  }

  private void begin(double x) {
    actuator =
        actuator == null
            ? new Actuator(plan, x, rng.split("cams"))
            : new Actuator(actuator, rng.split("cams"));
  }

  private void keep(
      String file,
      Drive drive,
      String zero,
      Sensor with,
      List<PoweredStroke> strokes,
      Optional<Cable> cable) {
    Wiring wiring = new Wiring();
    loose.accept(new Loose(wiring, actuator, rng.split("loose")));
    recordings.add(
        new Recording(
            file,
            drive,
            zero,
            actuator,
            wiring.timeline(actuator, rng.split("bounce")),
            new Logger(logger, with),
            seed * 31 + recordings.size(),
            List.copyOf(strokes),
            cable));
  }

  public Case named(String name, String done, String outcome, String decision, String... findings) {
    return new Case(name, done, outcome, sheet, recordings(), decision, List.of(findings));
  }
}
