package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tripline.harness.report.FigureText;
import tripline.result.Result;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.PathPoint;
import tripline.result.Result.StrokeResult;

/**
 * The last moments of a powered stroke, large: where it was cut, how far it ran on, what is left.
 */
final class Approach {
  private static final double LEFT = 40;
  private static final double RIGHT = 350;
  private static final double TOP = 20;
  private static final double BOTTOM = 176;
  private static final double HEIGHT = 206;

  /** From one line of text to the next, and from the middle of a letter to its foot. */
  private static final double LINE = 13;

  private static final double MIDDLE = 3.3;

  private final StrokeResult stroke;
  private final Coast coast;
  private final double stop;
  private final Axis time;
  private final Axis distance;
  private final Svg svg;
  private final String id;

  private Approach(String id, StrokeResult stroke, Coast coast, double stop, int number) {
    this.id = id;
    this.stroke = stroke;
    this.coast = coast;
    this.stop = stop;
    double run = coast.toS() - coast.fromS();
    this.time =
        new Axis(coast.fromS() - Math.max(run, 0.3), coast.toS() + 1.7 * run + 0.1, LEFT, RIGHT);
    double reach = Math.max(Math.abs(stop - coast.fromX()), Math.abs(coast.toX() - coast.fromX()));
    this.distance = new Axis(1.5 * reach, -0.22 * reach, TOP, BOTTOM);
    this.svg =
        new Svg(
            id,
            HEIGHT,
            "Approach of stroke " + number,
            "The limit contact changed %s turns before the %s stop; it coasted %s; margin %s; stopped by %s."
                .formatted(
                    Svg.format("%.3f", Math.abs(stop - coast.fromX())),
                    stroke.direction().equals("opening") ? "open" : "closed",
                    TravelOverTime.coastInWords(stroke),
                    margin()
                        .map(m -> FigureText.interval(m.value(), m.u95()) + " turns")
                        .orElse("not known"),
                    stroke.stoppedBy() == null ? "unknown" : stroke.stoppedBy()));
  }

  /** Drawn only where stop, limit contact and standstill are known. */
  static Optional<String> draw(
      String id, Result result, int recording, StrokeResult stroke, double span, int number) {
    boolean known =
        stroke.direction().equals("opening")
            ? result.travel().openStop() != null
            : result.travel().closedStop() != null;
    double stop = stroke.direction().equals("opening") ? span : 0;
    return Coast.of(result, recording, stroke)
        .filter(c -> known && !result.travel().datum().equals("first-reading"))
        .filter(c -> Math.abs(stop - c.fromX()) > 1e-6)
        .map(c -> new Approach(id, stroke, c, stop, number))
        .map(a -> a.drawn(result.recordings().get(recording).path().points()));
  }

  private Optional<Measured> margin() {
    return Optional.ofNullable(stroke.motor()).map(MotorResult::margin);
  }

  private String drawn(List<PathPoint> points) {
    svg.rect(LEFT, distance.at(0), RIGHT - LEFT, BOTTOM - distance.at(0))
        .fill(Palette.MID)
        .data("mark", "stop-zone");
    svg.rect(
            time.at(coast.fromS()),
            TOP,
            time.at(coast.toS()) - time.at(coast.fromS()),
            distance.at(0) - TOP)
        .fill(Palette.ACCENT)
        .set("fill-opacity", 0.18)
        .data("mark", "coast");
    scales();
    svg.path(Outline.of(line(points), time, distance)).fill("none").stroke(Palette.INK, 1.5);
    mark(coast.fromS(), coast.fromX(), "limit").fill(Palette.PAPER);
    mark(coast.toS(), coast.toX(), "standstill").fill(Palette.ACCENT);
    level(coast.fromX(), coast.toX(), "coast " + coastFigure(), 0);
    level(
        coast.toX(),
        stop,
        "margin " + margin().map(m -> FigureText.interval(m.value(), m.u95())).orElse("not known"),
        1);
    return svg.toString();
  }

  private String coastFigure() {
    return stroke.coast() == null
        ? "not known"
        : FigureText.interval(stroke.coast().value(), stroke.coast().u95());
  }

  /** The outline between the figures that are known better than it. */
  private List<PathPoint> line(List<PathPoint> points) {
    List<PathPoint> line = new ArrayList<>();
    for (PathPoint p : points) {
      if (p.timeS() < coast.fromS() || (p.timeS() > coast.fromS() && p.timeS() < coast.toS())) {
        line.add(p);
      }
    }
    line.add(new PathPoint(time.from(), Outline.at(points, time.from())));
    line.add(new PathPoint(coast.fromS(), coast.fromX()));
    line.add(new PathPoint(coast.toS(), coast.toX()));
    line.add(new PathPoint(time.to(), coast.toX()));
    line.sort(Comparator.comparingDouble(PathPoint::timeS));
    return line.stream()
        .map(p -> new PathPoint(p.timeS(), Math.abs(stop - p.position()) * side(p.position())))
        .filter(p -> distance.holds(p.position()))
        .toList();
  }

  private double side(double x) {
    return (stop > 0) == (x > stop) ? -1 : 1;
  }

  private void scales() {
    for (double tick : distance.ticks(5)) {
      svg.line(LEFT - 3, distance.at(tick), RIGHT, distance.at(tick))
          .stroke(Palette.LIGHT, 0.7)
          .data("tick", tick)
          .data("panel", id)
          .data("axis", "position");
      svg.text(
          LEFT - 6,
          distance.at(tick) + 3.3,
          "end",
          9.5,
          TravelOverTime.text(tick, distance.tickStep(5)));
    }
    for (double tick : time.ticks(5)) {
      svg.line(time.at(tick), BOTTOM, time.at(tick), BOTTOM + 4).stroke(Palette.DARK, 0.8);
      svg.textAbout(time.at(tick), BOTTOM + 14, 9.5, TravelOverTime.text(tick, time.tickStep(5)));
    }
    svg.text((LEFT + RIGHT) / 2, HEIGHT - 3, "middle", 9.5, "seconds").fill(Palette.DARK);
    String end = stop > 0 ? "open" : "closed";
    svg.text(2, 10, "start", 9.5, "turns to the " + end + " stop").fill(Palette.DARK);
    svg.text(LEFT + 4, (distance.at(0) + BOTTOM) / 2 + MIDDLE, "start", 9.5, end + " stop")
        .set("font-weight", "bold")
        .fill(Palette.PAPER);
  }

  private Element mark(double timeS, double x, String name) {
    double turns = Math.abs(stop - x) * side(x);
    return svg.circle(time.at(timeS), distance.at(turns), 3.2)
        .stroke(Palette.ACCENT, 1.5)
        .data("mark", name)
        .data("panel", id)
        .data("turns", turns);
  }

  /** A measure between two levels at the right, with its figure left of it. */
  private void level(double from, double to, String words, int column) {
    double a = distance.at(Math.abs(stop - from) * side(from));
    double b = distance.at(Math.abs(stop - to) * side(to));
    double x = RIGHT - 10 - column * 12;
    svg.line(x, a, x, b).stroke(Palette.INK, 1.1);
    svg.line(x - 4, a, x + 4, a).stroke(Palette.INK, 1.1);
    svg.line(x - 4, b, x + 4, b).stroke(Palette.INK, 1.1);
    svg.text(RIGHT - 32, column == 0 ? coastLine(a, b) : marginLine(a, b), "end", 9.5, words);
  }

  /** Clear of the path, which runs level along the nearer end of both measures. */
  private double coastLine(double limit, double standstill) {
    double under = isCrowded(standstill, distance.at(0)) ? LINE : 0;
    return Math.min((limit + standstill) / 2 + MIDDLE, standstill - 4 - under);
  }

  /** Where there is no room for it below the path it stands above, under the coast. */
  private double marginLine(double standstill, double stopAt) {
    return isCrowded(standstill, stopAt)
        ? Math.min(standstill, stopAt) - 5
        : below(standstill, stopAt);
  }

  private static double below(double standstill, double stopAt) {
    return Math.max((standstill + stopAt) / 2 + MIDDLE, standstill + LINE);
  }

  private static boolean isCrowded(double standstill, double stopAt) {
    return below(standstill, stopAt) > stopAt - 2;
  }
}
