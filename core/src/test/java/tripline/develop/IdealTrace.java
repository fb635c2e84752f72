package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.reduce.MarkPoint;
import tripline.reduce.Movement;
import tripline.reduce.Outline;
import tripline.reduce.Place;
import tripline.reduce.Stopping;
import tripline.reduce.Trace;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.truth.Actuator;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;
import tripline.truth.Sensor;
import tripline.truth.TrueChange;

/**
 * The trace a faultless reduction would give of what truly happened: the explaining half is tested
 * with it alone, apart from samples and fits.
 */
final class IdealTrace {
  /** Edges are stamped by the logger: no samples for bounce to hide from. */
  private static final long STAMP_NS = 1_000;

  private static final double STEP_S = 0.001;
  private static final double STILL = 1e-4;
  private static final int LEAST_REST = 120;

  private final Actuator actuator;
  private final Sensor sensor;
  private final List<PoweredStroke> powered;
  private final Rng rng;
  private final double u;
  private final long originNs;

  private IdealTrace(
      Actuator actuator,
      Sensor sensor,
      List<PoweredStroke> powered,
      Rng rng,
      double u,
      long originNs) {
    this.actuator = actuator;
    this.sensor = sensor;
    this.powered = powered;
    this.rng = rng;
    this.u = u;
    this.originNs = originNs;
  }

  /**
   * @param powered the powered strokes, for the onset of their deceleration
   * @param u standard deviation of the error put on every position of a change, reading units
   * @param originNs time of the first stamp
   */
  static Trace of(
      Actuator actuator,
      Sensor sensor,
      List<PoweredStroke> powered,
      Rng rng,
      double u,
      long originNs) {
    return new IdealTrace(actuator, sensor, powered, rng, u, originNs).trace();
  }

  private Trace trace() {
    Channels channels = new Channels(actuator.plan().channels());
    long all = (1L << channels.size()) - 1;
    long closed = actuator.initially();
    List<Change> changes = new ArrayList<>();
    for (TrueChange change : actuator.changes()) {
      changes.add(change(change));
      long bit = 1L << change.channel();
      closed = change.closed() ? closed | bit : closed & ~bit;
    }
    List<MarkPoint> marks = new ArrayList<>();
    for (Actuator.TrueMark mark : actuator.marks()) {
      double reading = sensor.exact(actuator.path(), mark.timeS());
      marks.add(
          new MarkPoint(
              ns(mark.timeS()),
              Mark.of(mark.text()),
              mark.text(),
              new Place(reading, 1e-4, Shape.NORMAL, 0, 1e-4, 9)));
    }
    return new Trace(
        channels,
        originNs,
        ns(actuator.timeS()),
        1,
        1,
        0.001,
        0,
        1_000_000L,
        movements(),
        changes,
        List.of(),
        marks,
        List.of(),
        List.of(),
        new Trace.States(all, actuator.initially()),
        new Trace.States(all, closed),
        new Outline(List.of()));
  }

  private Change change(TrueChange change) {
    double h = 5e-4;
    double speed =
        (sensor.exact(actuator.path(), change.timeS() + h)
                - sensor.exact(actuator.path(), change.timeS() - h))
            / (2 * h);
    boolean still = speeds(change.timeS() - 0.3) && speeds(change.timeS() + 0.3) && speed == 0;
    double reading = sensor.exact(actuator.path(), change.timeS()) + u * rng.gaussian();
    long atNs = ns(change.timeS());
    return new Change(
        change.channel(),
        change.closed() ? ContactState.CLOSED : ContactState.OPEN,
        atNs - STAMP_NS,
        atNs + STAMP_NS,
        atNs + STAMP_NS,
        0,
        new Place(reading, Math.max(u, 1e-6), Shape.NORMAL, speed, 1e-4, 50),
        still ? Change.Motion.AT_REST : Change.Motion.MOVING);
  }

  private boolean speeds(double timeS) {
    return actuator.path().handwheelSpeedAt(timeS) == 0;
  }

  private List<Movement> movements() {
    int n = (int) Math.round(actuator.timeS() / STEP_S);
    double still = STILL * STEP_S / Math.abs(sensor.turnsPerUnit());
    int[] sign = new int[n];
    for (int i = 0; i < n; i++) {
      double step = reading(i + 1) - reading(i);
      sign[i] = Math.abs(step) < still ? 0 : step > 0 ? 1 : -1;
    }
    fillShortRests(sign);
    List<Movement> movements = new ArrayList<>();
    for (int from = 0, to; from < n; from = to) {
      to = from;
      while (to < n && sign[to] == sign[from]) {
        to++;
      }
      movements.add(
          sign[from] == 0 ? rest(from, to) : move(from, to, sign[from], to < n && sign[to] == 0));
    }
    return movements;
  }

  private static void fillShortRests(int[] sign) {
    for (int from = 1; from < sign.length; from++) {
      int to = from;
      while (to < sign.length && sign[to] == 0) {
        to++;
      }
      if (to > from && to - from < LEAST_REST) {
        java.util.Arrays.fill(sign, from, to, sign[from - 1]);
      }
      from = Math.max(from, to - 1);
    }
  }

  private Movement rest(int from, int to) {
    double r = reading(from + (to - from) / 2);
    return new Movement.Rest(
        ns(from * STEP_S), ns(to * STEP_S), r, 1e-6, r, r, Movement.Grain.NOISE);
  }

  private Movement move(int from, int to, int sign, boolean stood) {
    double speed = (reading(to) - reading(from)) / ((to - from) * STEP_S);
    return new Movement.Move(
        ns(from * STEP_S),
        ns(to * STEP_S),
        reading(from),
        reading(to),
        sign,
        new Movement.Speed(speed, 0.001, 0.1),
        stood ? stopping(from, to) : Stopping.NONE);
  }

  private Stopping stopping(int from, int to) {
    for (PoweredStroke stroke : powered) {
      if (stroke.onsetS() > from * STEP_S && stroke.onsetS() < to * STEP_S) {
        double onset = sensor.exact(actuator.path(), stroke.onsetS());
        return stopping(ns(stroke.onsetS()), onset, to);
      }
    }
    return stopping(-1, Double.NaN, to);
  }

  private Stopping stopping(long onsetNs, double onset, int to) {
    return new Stopping(
        onsetNs, 2_000_000, onset, 0.001, ns(to * STEP_S), 2_000_000, reading(to), 1e-6, 0);
  }

  private double reading(int node) {
    return sensor.exact(actuator.path(), node * STEP_S);
  }

  private long ns(double timeS) {
    return originNs + Math.round(timeS * 1e9);
  }
}
