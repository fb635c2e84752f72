package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.harness.report.FigureText;
import tripline.harness.report.StrokeNumbers;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.StrokeResult;

/**
 * How far one cam tripped from its target, stroke by stroke, against its tolerance; where strokes
 * are to be accepted together, with the interval in which future trips fall.
 */
final class TripsOverStrokes {
  private static final double LEFT = 46;
  private static final double RIGHT = 350;
  private static final double TOP = 20;
  private static final double BOTTOM = 132;
  private static final double HEIGHT = 162;

  private static final int TICKS = 6;

  /** An interval wider than so many tolerances is not drawn to its end. */
  private static final double MOST_TOLERANCES = 3;

  private enum Kind {
    /** On the judged approach. */
    JUDGED,
    /** The same, of a stroke that does not count. */
    ASIDE,
    OTHER_DIRECTION
  }

  private record Point(int stroke, int setting, Kind kind, double deviation, double half) {}

  private final double tolerance;
  private final List<Point> points;
  private final Optional<FutureTrips> future;
  private final Axis strokes;
  private final Axis deviation;
  private final Svg svg;
  private final String id;

  private TripsOverStrokes(
      String id,
      CamResult cam,
      double tolerance,
      List<Point> points,
      Optional<FutureTrips> future,
      int strokes) {
    this.id = id;
    this.tolerance = tolerance;
    this.points = points;
    this.future = future;
    this.strokes = new Axis(0.5, strokes + 0.5, LEFT, RIGHT);
    double most = 1.35 * tolerance;
    for (Point p : points) {
      most = Math.max(most, 1.15 * (Math.abs(p.deviation) + p.half));
    }
    double reach = Math.min(1.1 * future.map(FutureTrips::reach).orElse(0.0), widest());
    this.deviation = Axis.symmetric(Math.max(most, reach), TICKS, BOTTOM, TOP);
    this.svg = new Svg(id, HEIGHT, "Trip point of cam " + cam.cam() + " over strokes", words());
  }

  /** Nothing is drawn for a cam without a target in turns or without two trips to compare. */
  static Optional<String> draw(String id, Result result, CamResult cam) {
    if (cam.target() == null || cam.tolerance() == null || cam.tolerance() <= 0) {
      return Optional.empty();
    }
    Optional<FutureTrips> future = FutureTrips.of(result, cam);
    List<Point> points = points(result, cam, cam.target(), future);
    int strokes = result.recordings().stream().mapToInt(r -> r.strokes().size()).sum();
    if (points.size() < 2) {
      return Optional.empty();
    }
    TripsOverStrokes drawing =
        new TripsOverStrokes(id, cam, cam.tolerance(), points, future, strokes);
    drawing.scales(strokes);
    future.ifPresent(drawing::interval);
    drawing.points.forEach(drawing::point);
    return Optional.of(drawing.svg.toString());
  }

  private double widest() {
    return MOST_TOLERANCES * tolerance;
  }

  private static List<Point> points(
      Result result, CamResult cam, double target, Optional<FutureTrips> future) {
    String approach = cam.from().equals("open") ? "opening" : "closing";
    Optional<String> contact = reference(result, cam);
    List<Point> points = new ArrayList<>();
    for (int r = 0; r < result.recordings().size(); r++) {
      int recording = r;
      for (StrokeResult stroke : result.recordings().get(r).strokes()) {
        int number = StrokeNumbers.of(result, recording, stroke.number());
        result.changes().stream()
            .filter(c -> c.recording() == recording && !c.atRest() && c.position() != null)
            .filter(c -> c.stroke() != null && c.stroke() == stroke.number())
            .filter(c -> contact.isPresent() && c.contact().equals(contact.get()))
            .filter(c -> isNearest(result, cam, SeenTrip.position(c)))
            .forEach(
                c ->
                    points.add(
                        new Point(
                            number,
                            c.setting(),
                            kind(c, approach, future),
                            SeenTrip.position(c) - target,
                            SeenTrip.half(c))));
      }
    }
    return points;
  }

  private static Kind kind(ChangeResult change, String approach, Optional<FutureTrips> future) {
    if (!approach.equals(change.direction())) {
      return Kind.OTHER_DIRECTION;
    }
    boolean aside = future.filter(f -> !f.counts(change)).isPresent();
    return aside ? Kind.ASIDE : Kind.JUDGED;
  }

  /** The cam's limit contact, else the first by order in the sheet that changed. */
  private static Optional<String> reference(Result result, CamResult cam) {
    List<String> mine =
        result.contacts().stream()
            .filter(c -> c.cam().equals(cam.cam()))
            .sorted(
                (a, b) ->
                    Boolean.compare(b.role().startsWith("limit-"), a.role().startsWith("limit-")))
            .map(Result.ContactResult::contact)
            .toList();
    return mine.stream()
        .filter(n -> result.changes().stream().map(ChangeResult::contact).anyMatch(n::equals))
        .findFirst();
  }

  /** A closed window has two trip points; a change belongs to the nearer. */
  private static boolean isNearest(Result result, CamResult cam, double x) {
    return result.cams().stream()
        .filter(c -> c.cam().equals(cam.cam()) && c.target() != null)
        .allMatch(c -> distance(cam, x) <= distance(c, x));
  }

  private static double distance(CamResult cam, double x) {
    return cam.target() == null ? Double.MAX_VALUE : Math.abs(x - cam.target());
  }

  private String words() {
    List<String> each = new ArrayList<>();
    for (Point p : points.subList(0, Math.min(points.size(), 24))) {
      each.add("stroke " + p.stroke + " " + FigureText.signed(p.deviation, p.half));
    }
    return "Deviation from target in turns, tolerance ± %s: %s.%s"
        .formatted(
            Svg.format("%.3f", tolerance),
            String.join(", ", each),
            future.map(FutureTrips::words).orElse(""));
  }

  private void scales(int count) {
    svg.rect(
            LEFT,
            deviation.at(tolerance),
            RIGHT - LEFT,
            deviation.at(-tolerance) - deviation.at(tolerance))
        .fill(Palette.FAINT);
    for (double tick : deviation.ticks(TICKS)) {
      svg.line(LEFT - 3, deviation.at(tick), RIGHT, deviation.at(tick))
          .stroke(Palette.LIGHT, 0.7)
          .data("tick", tick)
          .data("panel", id);
      String text = TravelOverTime.text(tick, deviation.tickStep(TICKS));
      svg.text(LEFT - 6, deviation.at(tick) + 3.3, "end", 9.5, tick > 1e-12 ? "+" + text : text);
    }
    for (double limit : new double[] {-tolerance, tolerance}) {
      svg.line(LEFT, deviation.at(limit), RIGHT, deviation.at(limit)).stroke(Palette.DARK, 1);
    }
    svg.line(LEFT, deviation.at(0), RIGHT, deviation.at(0)).stroke(Palette.INK, 0.9).dashed("4 3");
    int every = (int) Math.ceil(count / 15.0);
    for (int stroke = 1; stroke <= count; stroke += every) {
      svg.text(strokes.at(stroke), BOTTOM + 14, "middle", 9.5, Integer.toString(stroke));
    }
    svg.text((LEFT + RIGHT) / 2, HEIGHT - 3, "middle", 9.5, "stroke").fill(Palette.DARK);
    svg.text(2, 10, "start", 9.5, "turns off target, + toward open").fill(Palette.DARK);
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).setting != points.get(i - 1).setting) {
        double x = strokes.at((points.get(i).stroke + points.get(i - 1).stroke) / 2.0);
        svg.line(x, TOP, x, BOTTOM).stroke(Palette.INK, 1.2).dashed("2 2").data("mark", "setting");
      }
    }
  }

  private void interval(FutureTrips trips) {
    for (double end : new double[] {trips.from(), trips.to()}) {
      if (deviation.holds(end)) {
        svg.line(LEFT, deviation.at(end), RIGHT, deviation.at(end))
            .stroke(Palette.ACCENT, 1.3)
            .dashed("7 4")
            .data("mark", "interval")
            .data("panel", id)
            .data("turns", end);
      } else {
        beyond(end);
      }
    }
    svg.line(LEFT, deviation.at(trips.mean()), RIGHT, deviation.at(trips.mean()))
        .stroke(Palette.ACCENT, 0.8)
        .data("mark", "mean")
        .data("panel", id)
        .data("turns", trips.mean());
    trips
        .outlier()
        .ifPresent(
            o ->
                svg.circle(strokes.at(o.stroke()), deviation.at(o.deviation()), 6.5)
                    .fill("none")
                    .stroke(Palette.INK, 1.4)
                    .data("mark", "outlier")
                    .data("panel", id)
                    .data("turns", o.deviation()));
  }

  /** The interval goes on beyond the drawing. */
  private void beyond(double end) {
    double edge = end > 0 ? TOP : BOTTOM;
    double inward = end > 0 ? 7 : -7;
    svg.path(Svg.format("M%.2f %.2fl-4.5 %.2fh9z", RIGHT - 6, edge + 0.1 * inward, inward))
        .fill(Palette.ACCENT)
        .data("mark", "beyond");
  }

  private void point(Point p) {
    double x = strokes.at(p.stroke);
    double y = deviation.at(p.deviation);
    String colour = p.kind == Kind.OTHER_DIRECTION ? Palette.DARK : Palette.ACCENT;
    svg.line(x, deviation.at(p.deviation - p.half), x, deviation.at(p.deviation + p.half))
        .stroke(colour, 1.1);
    for (double end : new double[] {p.deviation - p.half, p.deviation + p.half}) {
      svg.line(x - 3, deviation.at(end), x + 3, deviation.at(end)).stroke(colour, 1.1);
    }
    Element mark =
        switch (p.kind) {
          case JUDGED -> svg.circle(x, y, 3.2).fill(Palette.ACCENT);
          case ASIDE -> svg.circle(x, y, 2.9).fill(Palette.PAPER).stroke(Palette.ACCENT, 1.1);
          case OTHER_DIRECTION ->
              svg.path(Svg.format("M%.2f %.2fh5.2v5.2h-5.2z", x - 2.6, y - 2.6))
                  .fill(Palette.PAPER)
                  .stroke(Palette.DARK, 1.1);
        };
    mark.data("mark", "deviation").data("panel", id).data("turns", p.deviation);
  }
}
