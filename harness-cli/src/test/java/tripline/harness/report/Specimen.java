package tripline.harness.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
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
import tripline.job.SensorSide;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Limits;
import tripline.result.Result;
import tripline.result.Result.Adjust;
import tripline.result.Result.AsFound;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.PartResult;
import tripline.result.Result.PathPoint;
import tripline.result.Result.PathResult;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SamplingResult;
import tripline.result.Result.SensorResult;
import tripline.result.Result.SettingResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.Stretch;
import tripline.result.Result.StrokeResult;
import tripline.result.Result.TravelResult;
import tripline.result.Result.TripResult;

/**
 * Results made by hand, as an analysis would leave them, for one valve of a fictional waterworks.
 */
public final class Specimen {
  public static final double SPAN = 31.02;
  private static final double U_STOP = 0.0105;
  private static final double DIFFERENTIAL = 0.04;
  private static final double SPEED = 0.645;

  private final JobSheet sheet;
  private final double[] trips;
  private final List<FindingResult> findings = new ArrayList<>();
  private final List<RecordingResult> recordings = new ArrayList<>();
  private final List<ChangeResult> changes = new ArrayList<>();
  private final List<AsFound> asFound = new ArrayList<>();
  private double uStop = U_STOP;
  private boolean stops = true;
  private double coast;
  private double clock;
  private String file = "cw114-hand.csv";

  private Specimen(JobSheet sheet, double close, double open, double quarter) {
    this.sheet = sheet;
    this.trips = new double[] {close, open, quarter};
  }

  public static Result accepted() {
    Specimen s = new Specimen(sheet(), 0.512, SPAN - 0.487, 7.70);
    s.hand(0, 2);
    return s.result();
  }

  public static Result early() {
    Specimen s = new Specimen(sheet(), 0.731, SPAN - 0.487, 7.70);
    s.hand(0, 2);
    s.findings.add(
        new FindingResult(
            "cam-early",
            "fault",
            null,
            "close",
            0,
            1,
            61.2,
            "trips 0.731 turns before the closed stop, 0.131 turns before its band begins",
            Map.of("backoff", 0.731, "u", 0.0107, "limit", 0.6),
            "move the trip point 0.23 turns toward closed, then stroke past it again"));
    return s.result();
  }

  public static Result nearTheLimit() {
    Specimen s = new Specimen(sheet(), 0.592, SPAN - 0.487, 7.70);
    s.hand(0, 2);
    return s.result();
  }

  public static Result withoutStop() {
    Specimen s = new Specimen(sheet(), 0.512, SPAN - 0.487, 7.70);
    s.stops = false;
    s.hand(0, 1);
    s.findings.add(
        new FindingResult(
            "stop-unknown",
            "note",
            null,
            null,
            null,
            null,
            null,
            "neither hard stop was touched: backoff is undecided at both ends",
            Map.of(),
            "run by hand to each stop and press the stop's mark"));
    return s.result();
  }

  public static Result powered() {
    Specimen s = new Specimen(sheet(), 0.512, SPAN - 0.487, 7.70);
    s.coast = 0.213;
    s.hand(0, 2);
    s.motor(0);
    return s.result();
  }

  /** Runs on to the stop at both ends. */
  public static Result coasting() {
    Specimen s = new Specimen(sheet(), 0.512, SPAN - 0.487, 7.70);
    s.coast = 0.509;
    s.hand(0, 2);
    s.motor(0);
    return s.result();
  }

  public static Result adjusted() {
    Specimen s = new Specimen(sheet(), 0.731, SPAN - 0.487, 7.70);
    s.hand(0, 2);
    s.asFound.add(new AsFound(0, s.cams(), s.contacts(), s.ends()));
    s.trips[0] = 0.508;
    s.hand(1, 2);
    s.findings.add(
        new FindingResult(
            "contact-moved-at-rest",
            "caution",
            "11-12",
            "close",
            0,
            null,
            118.4,
            "changed while the drive stood still: an adjustment, or a loose wire",
            Map.of("time_s", 118.4),
            "if nobody turned an adjuster then, check the wiring of 11-12"));
    return s.result();
  }

  /**
   * Markup, right-to-left text, control characters and a very long tag wherever text can come in.
   */
  public static final String HOSTILE =
      "</title></svg><script>document.title='owned'</script><img src=x onerror=\"document.title='owned'\">"
          + "\u001b[31m\u0007\u202eevil\u2066\u0000&amp;{{tag}}'\"";

  public static JobSheet hostileSheet() {
    return sheet(
        HOSTILE + "W".repeat(300),
        HOSTILE,
        "\u05d0\u05d1\u05d2 " + HOSTILE,
        HOSTILE,
        HOSTILE + "contact");
  }

  public static Result hostile() {
    Specimen s = new Specimen(hostileSheet(), 0.731, SPAN - 0.487, 7.70);
    s.file = HOSTILE;
    s.hand(0, 2);
    s.findings.add(
        new FindingResult(
            "cam-early",
            "fault",
            HOSTILE,
            HOSTILE,
            0,
            1,
            1.0,
            HOSTILE,
            Map.of(HOSTILE, HOSTILE),
            HOSTILE));
    return s.result();
  }

  public static JobSheet sheet() {
    return sheet(
        "CW-114",
        "Cooling-water return isolation, DN 300 wedge gate valve",
        "4471-C",
        "quarter",
        "61-62");
  }

  private static JobSheet sheet(
      String tag, String description, String order, String thirdCam, String lastContact) {
    return new JobSheet(
        new JobIdentity(tag, description, order),
        new TravelPlan(
            OptionalDouble.of(31.0),
            OptionalDouble.of(0.5),
            OptionalDouble.of(0.3),
            OptionalDouble.of(0.15),
            OptionalDouble.of(48),
            OptionalDouble.of(5)),
        new PositionChannel(SensorSide.HANDWHEEL, 1, 0.0005, 0, 0, 0, OptionalDouble.empty()),
        10_000_000,
        new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01),
        new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01),
        List.of(
            new Cam("close", List.of()),
            new Cam("open", List.of()),
            new Cam("quarter", List.of(new TripPlan(End.CLOSED, 25, 2, TripPlan.Unit.PERCENT)))),
        List.of(
            contact("11-12", "close", ClosedWhere.OPEN_SIDE, Role.LIMIT_CLOSING),
            contact("13-14", "close", ClosedWhere.CLOSED_SIDE, Role.BYPASS_OPENING),
            contact("21-22", "open", ClosedWhere.CLOSED_SIDE, Role.LIMIT_OPENING),
            contact("23-24", "open", ClosedWhere.OPEN_SIDE, Role.BYPASS_CLOSING),
            contact("33-34", "close", ClosedWhere.OPEN_SIDE, Role.LAMP_OPEN),
            contact("41-42", "open", ClosedWhere.CLOSED_SIDE, Role.LAMP_CLOSED),
            contact("53-54", thirdCam, ClosedWhere.OPEN_SIDE, Role.INTERLOCK),
            contact(lastContact, thirdCam, ClosedWhere.CLOSED_SIDE, Role.SPARE)),
        Acceptance.DEFAULT,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Contact contact(String name, String cam, ClosedWhere closed, Role role) {
    return new Contact(name, "k" + name.substring(0, 2), cam, closed, role, OptionalDouble.empty());
  }

  private void hand(int setting, int strokes) {
    List<StrokeResult> made = new ArrayList<>();
    List<PathPoint> path = new ArrayList<>();
    double t = clock;
    double low = stops ? 0 : 0.2;
    double high = stops ? SPAN : 12.0;
    double x = low;
    path.add(new PathPoint(t, x));
    t += 3;
    path.add(new PathPoint(t, x));
    for (int i = 0; i < strokes; i++) {
      boolean opening = i % 2 == 0;
      double to = opening ? high : low;
      double end = t + Math.abs(to - x) / SPEED;
      stroke(0, i + setting * 2, setting, opening, x, to, t, end, "hard-stop", made, path);
      x = to;
      t = end + 5;
      path.add(new PathPoint(t, x));
    }
    if (setting > 0) {
      RecordingResult before = recordings.remove(0);
      List<StrokeResult> all = new ArrayList<>(before.strokes());
      all.addAll(made);
      List<PathPoint> points = new ArrayList<>(before.path().points());
      points.addAll(path);
      recordings.add(recording(file, "hand", t, all, points));
    } else {
      recordings.add(recording(file, "hand", t, made, path));
    }
    clock = t;
  }

  private void motor(int setting) {
    List<StrokeResult> made = new ArrayList<>();
    List<PathPoint> path = new ArrayList<>();
    double t = 2;
    double from = trips[0] - coast;
    double to = trips[1] + coast;
    path.add(new PathPoint(0, from));
    path.add(new PathPoint(t, from));
    double end = t + (to - from) / SPEED;
    stroke(1, 0, setting, true, from, to, t, end, "limit", made, path);
    path.add(new PathPoint(end + 4, to));
    double again = end + 4;
    double close = again + (to - from) / SPEED;
    stroke(1, 1, setting, false, to, from, again, close, "limit", made, path);
    path.add(new PathPoint(close + 2, from));
    recordings.add(recording("cw114-motor.csv", "motor", close + 2, made, path));
  }

  private static RecordingResult recording(
      String file,
      String drive,
      double duration,
      List<StrokeResult> strokes,
      List<PathPoint> path) {
    return new RecordingResult(
        file,
        "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        drive,
        (long) (duration * 1000),
        duration,
        1000,
        0.0011,
        0.0005,
        new SamplingResult(1000.0, 1000.0, 1, 0.25, 249L),
        List.copyOf(strokes),
        new PathResult(List.copyOf(path)));
  }

  private void stroke(
      int recording,
      int number,
      int setting,
      boolean opening,
      double from,
      double to,
      double start,
      double end,
      String by,
      List<StrokeResult> strokes,
      List<PathPoint> path) {
    boolean motor = by.equals("limit");
    for (int i = 1; i <= 60; i++) {
      double share = i / 60.0;
      double ripple = motor ? 0 : 0.004 * Math.sin(share * 40);
      path.add(
          new PathPoint(
              start + (end - start) * share, from + (to - from) * share + (i < 60 ? ripple : 0)));
    }
    strokes.add(
        new StrokeResult(
            number,
            opening ? "opening" : "closing",
            from,
            to,
            start,
            end,
            true,
            by,
            motor ? figure(coast, 0.004) : null,
            motor ? end - start : null,
            setting,
            motor
                ? new MotorResult(
                    figure(SPEED, 0.002),
                    figure(end - 0.6, 0.02),
                    figure(to - (opening ? 0.2 : -0.2), 0.01),
                    figure(end, 0.02),
                    figure(to, 0.003),
                    figure(0.299, 0.0112))
                : null));
    for (Contact contact : sheet.contacts()) {
      double at = trip(contact.cam()) + (opening ? DIFFERENTIAL : 0);
      if (at <= Math.min(from, to) || at >= Math.max(from, to)) {
        continue;
      }
      boolean closes = (contact.closed() == ClosedWhere.OPEN_SIDE) == opening;
      double t = start + (at - from) / (to - from) * (end - start);
      changes.add(
          new ChangeResult(
              recording,
              number,
              setting,
              contact.name(),
              contact.cam(),
              closes ? "closed" : "open",
              opening ? "opening" : "closing",
              false,
              t,
              at + 4.2,
              0.0012,
              at,
              0.0107,
              closes ? 3 : 0,
              closes ? 0.0021 : 0.0004,
              figure(at, 0.0107)));
    }
  }

  private double trip(String cam) {
    return trips[cam.equals("close") ? 0 : cam.equals("open") ? 1 : 2];
  }

  private Measured figure(double value, double u) {
    return new Measured(
        value,
        u,
        1.96 * u,
        List.of(
            new PartResult("fit", 0.1 * u, "normal"),
            new PartResult("bracket", 0.05 * u, "rectangular"),
            new PartResult("stop:closed", 0.99 * u, "normal")));
  }

  private List<CamResult> cams() {
    return List.of(
        cam("close", 0, 0.5, 0.1, "closed", null),
        cam("open", 1, SPAN - 0.5, 0.1, "open", null),
        cam(sheet.cams().get(2).name(), 2, 0.25 * SPAN, 0.02 * SPAN, "closed", 25.0));
  }

  private CamResult cam(
      String name, int index, double target, double tolerance, String from, Double percent) {
    double u = uStop;
    boolean approached = !from.equals("open") || stops;
    boolean seen = stops;
    Decision decision =
        seen
            ? Conformity.decide(trips[index], u, Limits.around(target, tolerance), 1.645)
            : Decision.UNDECIDED;
    double move = target - trips[index];
    return new CamResult(
        name,
        null,
        approached ? trips[index] : null,
        approached ? u : null,
        approached ? 1.96 * u : null,
        stops ? target : null,
        stops ? tolerance : null,
        percent,
        from,
        decision,
        seen ? Conformity.probability(trips[index], u, Limits.around(target, tolerance)) : null,
        stops ? figure(DIFFERENTIAL, 0.0021) : null,
        stops ? 2 : 1,
        0.0008,
        trips[index] + DIFFERENTIAL,
        trips[index],
        approached ? figure(trips[index], u) : null,
        decision == Decision.REJECT
            ? new Adjust(
                move,
                360 * move,
                "toward " + (move < 0 ? "closed" : "open"),
                List.of(
                    "Run by hand to the %s stop.".formatted(from),
                    "Turn back until the lost motion is taken up, then 0.50 turns (180°) further.",
                    "Turn the adjuster of cam %s against its turning while it travels toward that end, until 11-12 changes."
                        .formatted(name),
                    "Stroke past the point again and record it: the trip point must not have moved."))
            : null);
  }

  private EndsResult ends() {
    return new EndsResult(end(trips[0]), end(SPAN - trips[1]));
  }

  private EndResult end(double value) {
    boolean powered = coast > 0;
    Limits limits = Limits.around(0.5, 0.1);
    Decision decision = stops ? Conformity.decide(value, uStop, limits, 1.645) : Decision.UNDECIDED;
    double margin = value - coast;
    return new EndResult(
        new Backoff(
            stops ? value : null,
            stops ? uStop : null,
            stops ? 1.96 * uStop : null,
            0.5,
            0.1,
            decision,
            stops ? Conformity.probability(value, uStop, limits) : null,
            stops ? figure(value, uStop) : null),
        powered ? "limit" : null,
        powered ? figure(coast, 0.004) : null,
        powered ? figure(margin, 0.0112) : null,
        powered ? Conformity.decide(margin, 0.0112, Limits.atLeast(0), 1.645) : null,
        powered ? Conformity.probability(margin, 0.0112, Limits.atLeast(0)) : null,
        decision);
  }

  private ContactResult seen(Contact contact) {
    double at = trip(contact.cam());
    boolean exercised = stops;
    boolean above = contact.closed() == ClosedWhere.OPEN_SIDE;
    double high = stops ? SPAN : 12.0;
    double low = stops ? 0 : 0.2;
    double back = at + DIFFERENTIAL;
    return new ContactResult(
        contact.name(),
        contact.role().word(),
        contact.cam(),
        exercised ? Decision.ACCEPT : Decision.UNDECIDED,
        true,
        exercised,
        0.0021,
        stretch(above ? back : low, above ? high : Math.min(back, high)),
        stops ? stretch(above ? at : low, above ? high : at) : List.of(),
        stops ? tripsOf(contact) : List.of());
  }

  private List<ContactResult> contacts() {
    return sheet.contacts().stream().map(this::seen).toList();
  }

  private List<TripResult> tripsOf(Contact contact) {
    double at = trip(contact.cam());
    boolean above = contact.closed() == ClosedWhere.OPEN_SIDE;
    return List.of(
        new TripResult(
            null, "opening", above ? "closed" : "open", figure(at + DIFFERENTIAL, uStop), 1, 0),
        new TripResult(null, "closing", above ? "open" : "closed", figure(at, uStop), 1, 0));
  }

  private static List<Stretch> stretch(double from, double to) {
    return from < to ? List.of(new Stretch(from, to)) : List.of();
  }

  private Result result() {
    List<SettingResult> settings = new ArrayList<>();
    for (int i = 0; i <= asFound.size(); i++) {
      settings.add(new SettingResult(i, 0, i * 118.4, (i + 1) * 118.4, i == asFound.size()));
    }
    List<CamResult> cams = cams();
    EndsResult ends = ends();
    Decision whole = ends.closed().decision().and(ends.open().decision());
    for (CamResult cam : cams) {
      whole = whole.and(cam.decision());
    }
    changes.sort(
        Comparator.comparingInt(ChangeResult::recording).thenComparingDouble(ChangeResult::timeS));
    return new Result(
        whole,
        sheet.job().tag(),
        List.copyOf(recordings),
        new TravelResult(
            stops ? "closed-stop" : "first-reading",
            0,
            new SensorResult("handwheel", 1, 0),
            stops ? new StopResult(4.2, U_STOP, "mark") : null,
            stops ? new StopResult(4.2 + SPAN, U_STOP, "plateau") : null,
            stops ? figure(SPAN, 0.0148) : null,
            stops ? figure(0.24, 0.0021) : null,
            stops
                ? "At most this much: a cam's own differential cannot be told from lost motion."
                : null),
        settings,
        List.copyOf(changes),
        cams,
        contacts(),
        ends,
        List.copyOf(findings),
        List.copyOf(asFound));
  }
}
