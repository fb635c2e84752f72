package tripline.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Role;
import tripline.job.Seat;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;
import tripline.truth.Sensor;

/**
 * The waterworks' usual development chart: limits with the opposite lamp on their cam, a bypass
 * each way, and an interlock with a spare half-way. Terminal marks follow EN 50013.
 */
public final class Chart {
  private String tag = "CW-114";
  private String description = "Cooling-water return isolation, DN 300 wedge gate valve";
  private double span = 10;
  private double stopU = 0.01;
  private Seat closedSeat = Seat.LIMIT;
  private double backoff = 0.5;
  private OptionalDouble strokeTimeS = OptionalDouble.empty();
  private boolean powered;
  private boolean band;
  private boolean lampCams;
  private double bypassTolerance = 3;
  private Acceptance acceptance = Acceptance.DEFAULT;
  private final Sensor sensor;

  private Chart(Sensor sensor) {
    this.sensor = sensor;
  }

  public static Chart of(Sensor sensor) {
    return new Chart(sensor);
  }

  public Chart valve(String newTag, String newDescription, double spanTurns) {
    tag = newTag;
    description = newDescription;
    span = spanTurns;
    return this;
  }

  public Chart stopU(double turns) {
    stopU = turns;
    return this;
  }

  public Chart torqueSeated() {
    closedSeat = Seat.TORQUE;
    return this;
  }

  public Chart backoff(double turns) {
    backoff = turns;
    return this;
  }

  /** Torque contacts and contactor auxiliaries are wired to the logger. */
  public Chart powered() {
    powered = true;
    return this;
  }

  public Chart strokeTime(double seconds) {
    strokeTimeS = OptionalDouble.of(seconds);
    return this;
  }

  /** The half-way cam is a closed window from 40 to 60 %. */
  public Chart band() {
    band = true;
    return this;
  }

  /** The lamps have cams of their own, with wide tolerances, instead of riding with the limits. */
  public Chart lampCams() {
    lampCams = true;
    return this;
  }

  /** Tolerance of the bypass cams' 12 per cent. */
  public Chart bypassTolerance(double percent) {
    bypassTolerance = percent;
    return this;
  }

  /** What an acceptance asks for. */
  public Chart acceptance(Acceptance asked) {
    acceptance = asked;
    return this;
  }

  public JobSheet sheet() {
    TravelPlan travel =
        new TravelPlan(
            OptionalDouble.of(span),
            OptionalDouble.of(0.5),
            OptionalDouble.of(0.5),
            OptionalDouble.of(0.15),
            strokeTimeS,
            strokeTimeS.isPresent() ? OptionalDouble.of(2) : OptionalDouble.empty());
    return new JobSheet(
        new JobIdentity(tag, description, "4471-C"),
        travel,
        position(sensor),
        10_000_000,
        new EndSetting(closedSeat, backoff, 0.1, stopU),
        new EndSetting(Seat.LIMIT, backoff, 0.1, stopU),
        cams(),
        contacts(),
        acceptance,
        wired("t1"),
        wired("t2"),
        wired("m1"),
        wired("m2"));
  }

  private Optional<String> wired(String channel) {
    return powered ? Optional.of(channel) : Optional.empty();
  }

  /** The position channel as the sheet states it. */
  public static PositionChannel position(Sensor sensor) {
    return new PositionChannel(
        sensor.side(),
        sensor.turnsPerUnit(),
        sensor.resolution(),
        sensor.scaleError() == 0 ? 0 : 0.0005,
        Math.round(sensor.skewS() * 1e9),
        0,
        sensor.modulus() > 0 ? OptionalDouble.of(sensor.modulus()) : OptionalDouble.empty());
  }

  private List<Cam> cams() {
    List<Cam> cams = new ArrayList<>();
    cams.add(new Cam("close", List.of()));
    cams.add(new Cam("lift", List.of(percent(End.CLOSED, 12, bypassTolerance))));
    cams.add(
        band
            ? new Cam("band", List.of(percent(End.CLOSED, 40, 2), percent(End.CLOSED, 60, 2)))
            : new Cam("half", List.of(percent(End.CLOSED, 50, 2))));
    cams.add(new Cam("drop", List.of(percent(End.OPEN, 12, bypassTolerance))));
    cams.add(new Cam("open", List.of()));
    if (lampCams) {
      cams.add(new Cam("lamp-open", List.of(percent(End.CLOSED, 30, 29))));
      cams.add(new Cam("lamp-closed", List.of(percent(End.OPEN, 30, 29))));
    }
    return cams;
  }

  private List<Contact> contacts() {
    String middle = band ? "band" : "half";
    ClosedWhere in = band ? ClosedWhere.INSIDE : ClosedWhere.OPEN_SIDE;
    ClosedWhere out = band ? ClosedWhere.OUTSIDE : ClosedWhere.CLOSED_SIDE;
    return List.of(
        contact("11-12", "k1", "close", ClosedWhere.OPEN_SIDE, Role.LIMIT_CLOSING),
        contact(
            "21-22", "k2", lampCams ? "lamp-open" : "close", ClosedWhere.OPEN_SIDE, Role.LAMP_OPEN),
        bypass("33-34", "k3", "lift", ClosedWhere.CLOSED_SIDE, Role.BYPASS_OPENING),
        contact("41-42", "k4", "open", ClosedWhere.CLOSED_SIDE, Role.LIMIT_OPENING),
        contact(
            "51-52",
            "k5",
            lampCams ? "lamp-closed" : "open",
            ClosedWhere.CLOSED_SIDE,
            Role.LAMP_CLOSED),
        bypass("63-64", "k6", "drop", ClosedWhere.OPEN_SIDE, Role.BYPASS_CLOSING),
        contact("73-74", "k7", middle, in, Role.INTERLOCK),
        contact("81-82", "k8", middle, out, Role.SPARE));
  }

  private static Contact contact(
      String name, String channel, String cam, ClosedWhere closed, Role role) {
    return new Contact(name, channel, cam, closed, role, OptionalDouble.empty());
  }

  private static Contact bypass(
      String name, String channel, String cam, ClosedWhere closed, Role role) {
    return new Contact(name, channel, cam, closed, role, OptionalDouble.of(8));
  }

  private static TripPlan percent(End from, double distance, double tolerance) {
    return new TripPlan(from, distance, tolerance, TripPlan.Unit.PERCENT);
  }
}
