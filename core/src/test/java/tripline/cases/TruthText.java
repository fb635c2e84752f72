package tripline.cases;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.Role;
import tripline.job.SensorSide;
import tripline.job.TripPlan;
import tripline.truth.Floor;
import tripline.truth.Json;
import tripline.truth.PoweredStroke;
import tripline.truth.TrueChange;

/**
 * What truly happened in a case, as {@code truth.json}. Every figure carries the tolerance within
 * which an honest measurement must find it: four standard deviations of where the technician takes
 * the stop to be and of twice the floor, 3 ms of travel for a first bounce nobody saw, and the own
 * differential of the steadiest cam, which no measurement can tell from lost motion.
 */
final class TruthText {
  private final Case c;
  private final List<Seen> seen = new ArrayList<>();
  private final List<Object> strokes = new ArrayList<>();

  /** A change of the setting in force at the end (or of one before). */
  private record Seen(
      int recording, TrueChange change, double sinceFirstS, double tolerance, boolean last) {}

  TruthText(Case c) {
    this.c = c;
  }

  void add(Recording r, double firstS) {
    int index = c.recordings().indexOf(r);
    double lastAdjusted =
        r.actuator().adjustedS().stream().mapToDouble(Double::doubleValue).max().orElse(-1);
    if (lastAdjusted >= 0) {
      seen.replaceAll(s -> new Seen(s.recording, s.change, s.sinceFirstS, s.tolerance, false));
    }
    for (TrueChange t : r.actuator().changes()) {
      boolean last = t.timeS() > lastAdjusted;
      seen.add(new Seen(index, t, t.timeS() - firstS, tolerance(r, t), last));
    }
    for (PoweredStroke s : r.powered()) {
      strokes.add(
          Json.object(
              "recording", index,
              "direction", s.toward().approach().word(),
              "start_s", s.startS() - firstS,
              "end_s", s.stillS() - firstS,
              "from", s.fromX(),
              "to", s.stillX(),
              "stopped_by", word(s.cause()),
              "coast", s.coast()));
    }
  }

  private static String word(PoweredStroke.Cause cause) {
    return switch (cause) {
      case LIMIT -> "limit";
      case TORQUE -> "torque";
      case OPERATOR -> "operator";
      case POWER_LOST -> "power-lost";
      case STALLED -> "hard-stop";
    };
  }

  private double tolerance(Recording r, TrueChange t) {
    double count = r.logger().sensor().resolution() * Math.abs(r.logger().sensor().turnsPerUnit());
    double floor = Floor.of(t, r.logger()).turns();
    double known = Double.isNaN(floor) ? count : floor;
    return 4 * Math.hypot(stopU(), 2 * known)
        + 0.25 * count
        + 0.003 * Math.abs(t.speed())
        + leastDifferential();
  }

  private double stopU() {
    return Math.max(c.sheet().closed().stopUTurns(), c.sheet().open().stopUTurns());
  }

  private double leastDifferential() {
    return c.recordings().get(0).actuator().plan().cams().stream()
        .mapToDouble(cam -> cam.differential())
        .min()
        .orElse(0);
  }

  Map<String, Object> whole() {
    JobSheet sheet = c.sheet();
    double span = span();
    boolean handwheel = sheet.position().side() == SensorSide.HANDWHEEL;
    double play = handwheel ? c.recordings().get(0).actuator().plan().lostMotionTurns() : 0;
    Map<String, Object> truth =
        Json.object("case", c.name(), "decision", c.decision(), "findings", c.findings());
    truth.put(
        "travel",
        Json.object(
            "span", figure(span, 6 * stopU() + leastDifferential() + 0.02),
            "lost_motion", figure(play + leastDifferential(), 0.03 + count())));
    truth.put("ends", Json.object("closed", backoff(End.CLOSED), "open", backoff(End.OPEN)));
    List<Object> cams = new ArrayList<>();
    sheet.cams().forEach(cam -> trips(cam, span, cams));
    truth.put("cams", cams);
    c.compared().ifPresent(compared -> truth.put("moved", compared.moved()));
    if (c.command() == Case.Command.ACCEPT) {
      truth.put(
          "acceptance",
          Json.object(
              "strokes",
              Json.object(
                  "opening", fullStrokes(Direction.OPENING),
                  "closing", fullStrokes(Direction.CLOSING))));
    }
    truth.put("strokes", strokes);
    truth.put("changes", seen.stream().map(this::change).toList());
    return truth;
  }

  /** Strokes of the last setting on which both limit contacts changed. */
  private long fullStrokes(Direction direction) {
    Map<List<Integer>, Set<String>> limits = new LinkedHashMap<>();
    for (Seen s : seen) {
      Optional<Role> role = role(name(s));
      boolean toward = s.change.speed() * direction.sign() > 0;
      if (s.last && !s.change.atRest() && toward && role.flatMap(Role::limitOf).isPresent()) {
        limits
            .computeIfAbsent(List.of(s.recording, s.change.stroke()), k -> new TreeSet<>())
            .add(name(s));
      }
    }
    return limits.values().stream().filter(names -> names.size() == End.values().length).count();
  }

  private Optional<Role> role(String contact) {
    return c.sheet().contacts().stream()
        .filter(k -> k.name().equals(contact))
        .map(Contact::role)
        .findFirst();
  }

  private double count() {
    return c.sheet().position().resolution() * Math.abs(c.sheet().position().turnsPerUnit());
  }

  private double span() {
    return c.recordings().get(0).actuator().plan().spanTurns();
  }

  private static Map<String, Object> figure(double value, double tolerance) {
    return Json.object("value", value, "tolerance", tolerance);
  }

  private Map<String, Object> backoff(End end) {
    Contact limit =
        c.sheet().contacts().stream()
            .filter(k -> k.role().limitOf().filter(e -> e == end).isPresent())
            .findFirst()
            .orElseThrow();
    List<Seen> there = approaching(limit, end.approach());
    double x = there.stream().mapToDouble(s -> s.change.x()).average().orElse(Double.NaN);
    double tolerance = there.stream().mapToDouble(Seen::tolerance).max().orElse(Double.NaN);
    return Json.object("backoff", figure(end == End.CLOSED ? x : span() - x, tolerance));
  }

  private void trips(Cam cam, double span, List<Object> into) {
    Contact reference =
        c.sheet().contacts().stream()
            .filter(k -> k.cam().equals(cam.name()))
            .filter(k -> k.role().limitOf().isPresent())
            .findFirst()
            .or(
                () ->
                    c.sheet().contacts().stream()
                        .filter(k -> k.cam().equals(cam.name()))
                        .findFirst())
            .orElseThrow();
    List<TripPlan> plans = Built.trips(c.sheet(), cam);
    for (int e = 0; e < plans.size(); e++) {
      TripPlan plan = plans.get(e);
      int edge = e;
      List<Seen> there =
          approaching(reference, plan.from().approach()).stream()
              .filter(s -> plans.size() == 1 || rises(s, reference) == (edge == 0))
              .toList();
      double x = there.stream().mapToDouble(s -> s.change.x()).average().orElse(Double.NaN);
      double u = there.stream().mapToDouble(Seen::tolerance).max().orElse(Double.NaN);
      Map<String, Object> trip = new LinkedHashMap<>();
      trip.put("cam", cam.name());
      trip.put("edge", plans.size() == 1 ? null : edge == 0 ? "lower" : "upper");
      trip.put("trip", figure(x, u));
      trip.put("target", plan.positionTurns(span));
      trip.put("decision", decision(x - plan.positionTurns(span), plan.toleranceTurns(span), u));
      into.add(trip);
    }
  }

  /**
   * Whether a window's contact passed its lower trip point: inside makes there opening, breaks
   * there closing.
   */
  private static boolean rises(Seen s, Contact contact) {
    boolean closesOpening = s.change.closed() == s.change.speed() > 0;
    return closesOpening == (contact.closed() == ClosedWhere.INSIDE);
  }

  /** Accept or reject where an honest measurement cannot doubt; null between. */
  private static String decision(double off, double tolerance, double u) {
    if (Double.isNaN(off)) {
      return null;
    }
    return Math.abs(off) <= tolerance - u
        ? "accept"
        : Math.abs(off) >= tolerance + u ? "reject" : null;
  }

  private List<Seen> approaching(Contact contact, Direction direction) {
    return seen.stream()
        .filter(s -> s.last && !s.change.atRest())
        .filter(s -> name(s).equals(contact.name()))
        .filter(s -> s.change.speed() * direction.sign() > 0)
        .toList();
  }

  private String name(Seen s) {
    List<String> channels = c.recordings().get(s.recording).actuator().plan().channels();
    String channel = channels.get(s.change.channel());
    return c.sheet().contacts().stream()
        .filter(k -> k.channel().equals(channel))
        .map(Contact::name)
        .findFirst()
        .orElse(channel);
  }

  private Map<String, Object> change(Seen s) {
    TrueChange t = s.change;
    return Json.object(
        "recording",
        s.recording,
        "contact",
        name(s),
        "to",
        t.closed() ? "closed" : "open",
        "direction",
        t.atRest() ? null : t.speed() > 0 ? "opening" : "closing",
        "at_rest",
        t.atRest(),
        "time_s",
        s.sinceFirstS,
        "position",
        t.x(),
        "tolerance",
        s.tolerance);
  }
}
