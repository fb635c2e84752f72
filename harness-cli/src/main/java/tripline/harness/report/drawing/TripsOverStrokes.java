package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.harness.report.FigureText;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.StrokeResult;

/** How far one cam tripped from its target, stroke by stroke, against its tolerance. */
final class TripsOverStrokes {
  private static final double LEFT = 46;
  private static final double RIGHT = 350;
  private static final double TOP = 20;
  private static final double BOTTOM = 132;
  private static final double HEIGHT = 162;

  private record Point(int stroke, int setting, boolean judged, double deviation, double half) {}

  private final double tolerance;
  private final List<Point> points;
  private final Axis strokes;
  private final Axis deviation;
  private final Svg svg;
  private final String id;

  private TripsOverStrokes(
      String id, String cam, double tolerance, List<Point> points, int strokes) {
    this.id = id;
    this.tolerance = tolerance;
    this.points = points;
    this.strokes = new Axis(0.5, strokes + 0.5, LEFT, RIGHT);
    double most = 1.35 * tolerance;
    for (Point p : points) {
      most = Math.max(most, 1.15 * (Math.abs(p.deviation) + p.half));
    }
    this.deviation = new Axis(-most, most, BOTTOM, TOP);
    this.svg = new Svg(id, HEIGHT, "Trip point of cam " + cam + " over strokes", words());
  }

  /** Nothing is drawn for a cam without a target in turns or without two trips to compare. */
  static Optional<String> draw(String id, Result result, CamResult cam) {
    if (cam.target() == null || cam.tolerance() == null || cam.tolerance() <= 0) {
      return Optional.empty();
    }
    List<Point> points = points(result, cam, cam.target());
    int strokes = result.recordings().stream().mapToInt(r -> r.strokes().size()).sum();
    if (points.size() < 2) {
      return Optional.empty();
    }
    TripsOverStrokes drawing =
        new TripsOverStrokes(id, cam.cam(), cam.tolerance(), points, strokes);
    drawing.scales(strokes);
    drawing.points.forEach(drawing::point);
    return Optional.of(drawing.svg.toString());
  }

  private static List<Point> points(Result result, CamResult cam, double target) {
    String approach = cam.from().equals("open") ? "opening" : "closing";
    Optional<String> contact = reference(result, cam);
    List<Point> points = new ArrayList<>();
    int before = 0;
    for (int r = 0; r < result.recordings().size(); r++) {
      int recording = r;
      for (StrokeResult stroke : result.recordings().get(r).strokes()) {
        int number = before + stroke.number() + 1;
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
                            approach.equals(c.direction()),
                            SeenTrip.position(c) - target,
                            SeenTrip.half(c))));
      }
      before += result.recordings().get(r).strokes().size();
    }
    return points;
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
    return "Deviation from target in turns, tolerance ± %s: %s."
        .formatted(Svg.format("%.3f", tolerance), String.join(", ", each));
  }

  private void scales(int count) {
    svg.rect(
            LEFT,
            deviation.at(tolerance),
            RIGHT - LEFT,
            deviation.at(-tolerance) - deviation.at(tolerance))
        .fill(Palette.FAINT);
    for (double tick : deviation.ticks(5)) {
      svg.line(LEFT - 3, deviation.at(tick), RIGHT, deviation.at(tick))
          .stroke(Palette.LIGHT, 0.7)
          .data("tick", tick)
          .data("panel", id);
      String text = TravelOverTime.text(tick, deviation.tickStep(5));
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

  private void point(Point p) {
    double x = strokes.at(p.stroke);
    double y = deviation.at(p.deviation);
    String colour = p.judged ? Palette.ACCENT : Palette.DARK;
    svg.line(x, deviation.at(p.deviation - p.half), x, deviation.at(p.deviation + p.half))
        .stroke(colour, 1.1);
    for (double end : new double[] {p.deviation - p.half, p.deviation + p.half}) {
      svg.line(x - 3, deviation.at(end), x + 3, deviation.at(end)).stroke(colour, 1.1);
    }
    Element mark =
        p.judged
            ? svg.circle(x, y, 3.2).fill(Palette.ACCENT)
            : svg.path(Svg.format("M%.2f %.2fh5.2v5.2h-5.2z", x - 2.6, y - 2.6))
                .fill(Palette.PAPER)
                .stroke(Palette.DARK, 1.1);
    mark.data("mark", "deviation").data("panel", id).data("turns", p.deviation);
  }
}
