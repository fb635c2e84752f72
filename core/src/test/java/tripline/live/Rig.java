package tripline.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.travel.RecordingTrace;
import tripline.truth.Rng;

/**
 * A valve that can be turned, adjusted and asked while a logger looks on: handwheel, play, cams
 * with one trip point each and a differential, rows 200 times a second into a live reduction.
 */
public final class Rig {
  private static final long ROW_NS = 5_000_000;
  private static final double SPEED = 0.6;

  /** What the valve truly is. */
  public record Truth(
      double spanTurns, double lostMotionTurns, double differentialTurns, double noise) {}

  public final LiveReduction live;
  public final Map<String, Double> trips = new LinkedHashMap<>();
  private final JobSheet sheet;
  final Truth truth;
  private final Rng rng;
  private final Reduction spare;
  private final Map<String, Boolean> above = new LinkedHashMap<>();
  private long timeNs;
  private double handwheel;
  private double drive;
  private double speed;

  /** Stands at x, play taken up as after closing. */
  public Rig(JobSheet sheet, Truth truth, double x, long seed, Map<String, Double> trips) {
    this.sheet = sheet;
    this.truth = truth;
    this.trips.putAll(trips);
    rng = new Rng(seed);
    handwheel = x;
    drive = x;
    trips.forEach((cam, trip) -> above.put(cam, x > trip));
    live = new LiveReduction(settings(sheet));
    spare = live.spare();
    rest(1);
  }

  public double drive() {
    return drive;
  }

  public void rest(double seconds) {
    for (int k = 0; k < seconds * 1e9 / ROW_NS; k++) {
      row();
    }
  }

  /** Turns the handwheel so far toward open (or, negative, closed), or until a hard stop. */
  public void turn(double turns) {
    double target = handwheel + turns;
    double sign = Math.signum(turns);
    speed = 0.02;
    while (sign * (target - handwheel) > 1e-9) {
      double left = sign * (target - handwheel);
      double aim = Math.min(SPEED * (1 + 0.2 * Math.sin(12 * handwheel)), 4 * left + 0.03);
      speed += (aim - speed) * 0.05;
      double step = Math.min(left, speed * ROW_NS * 1e-9);
      double before = handwheel;
      handwheel = withinStops(handwheel + sign * step);
      row();
      if (handwheel == before) {
        break;
      }
    }
    rest(0.8);
  }

  /** Turns as {@link #turn} does, and is asked while it still moves. */
  public void turnWithoutStopping(double turns) {
    for (int k = 0; k < Math.abs(turns) / SPEED * 1e9 / ROW_NS; k++) {
      handwheel = withinStops(handwheel + Math.signum(turns) * SPEED * ROW_NS * 1e-9);
      row();
    }
  }

  public double countTurns() {
    return sheet.position().resolution() * Math.abs(sheet.position().turnsPerUnit());
  }

  private double withinStops(double h) {
    return Math.min(Math.max(h, 0), truth.spanTurns + truth.lostMotionTurns);
  }

  public void mark(End end) {
    live.onMark(
        timeNs,
        end == End.CLOSED ? Mark.CLOSED_STOP : Mark.OPEN_STOP,
        end == End.CLOSED ? "closed-stop" : "open-stop");
    rest(0.6);
  }

  public void adjusted() {
    live.onMark(timeNs, Mark.ADJUSTED, "adjusted");
  }

  /** What he takes to go for his tool, and to put it away, s. */
  public double patienceS = 1;

  /** Turns the adjuster of a cam one way until its contacts have just changed. */
  public void adjust(String cam, boolean towardTravel, Direction approach) {
    rest(patienceS);
    boolean was = above.get(cam);
    double way = (towardTravel ? -1 : 1) * approach.sign();
    for (int k = 0; k < 4000 && above.get(cam) == was; k++) {
      trips.merge(cam, way * 0.002, Double::sum);
      row();
    }
    rest(patienceS);
  }

  private void row() {
    drive = Math.min(Math.max(drive, handwheel - truth.lostMotionTurns), handwheel);
    long closed = 0;
    for (Map.Entry<String, Double> cam : trips.entrySet()) {
      double rise = cam.getValue() + truth.differentialTurns;
      if (drive > rise) {
        above.put(cam.getKey(), true);
      } else if (drive <= cam.getValue()) {
        above.put(cam.getKey(), false);
      }
    }
    for (Contact contact : sheet.contacts()) {
      boolean shut = above.get(contact.cam()) == (contact.closed() == ClosedWhere.OPEN_SIDE);
      closed |= shut ? 1L << sheet.channels().indexOf(contact.channel()) : 0;
    }
    boolean onDrive = sheet.position().side() == SensorSide.DRIVE;
    double units = (onDrive ? drive : handwheel) / sheet.position().turnsPerUnit();
    double noisy = units + truth.noise / Math.abs(sheet.position().turnsPerUnit()) * rng.gaussian();
    double count = sheet.position().resolution();
    double reading = count > 0 ? Math.rint(noisy / count) * count : noisy;
    timeNs += ROW_NS;
    live.onRow(timeNs, reading, (1L << sheet.channels().size()) - 1, closed);
  }

  public LiveAnswer answer() {
    return answer(sheet, live, spare);
  }

  public static LiveAnswer answer(JobSheet sheet, LiveReduction live, Reduction spare) {
    live.copyTo(spare);
    RecordingTrace recording =
        new RecordingTrace("live", "", Drive.HAND, RecordingTrace.Zero.LOST, spare.finish());
    return LiveAnswer.of(sheet, List.of(recording), Optional.empty());
  }

  public static ReductionSettings settings(JobSheet sheet) {
    return new ReductionSettings(
        sheet.channels(),
        sheet.settleNs(),
        0,
        sheet.position().resolution(),
        sheet.position().modulus(),
        sheet.position().turnsPerUnit());
  }

  public List<Double> turned() {
    return new ArrayList<>(trips.values());
  }
}
