package tripline.harness.report.drawing;

import java.util.List;
import tripline.result.Result.PathPoint;

/** The outline of a travel as a line of the drawing, no finer than the eye. */
final class Outline {
  private static final double FINEST = 0.25;

  private Outline() {}

  /** Points of the stretch of time that the axis shows; empty without any. */
  static String of(List<PathPoint> points, Axis time, Axis position) {
    StringBuilder path = new StringBuilder();
    double lastX = Double.NaN;
    double lastY = Double.NaN;
    for (int i = 0; i < points.size(); i++) {
      PathPoint point = points.get(i);
      double x = time.at(point.timeS());
      double y = position.at(point.position());
      boolean last = i == points.size() - 1;
      if (!time.holds(point.timeS())
          || (!last && Math.abs(x - lastX) < FINEST && Math.abs(y - lastY) < FINEST)) {
        continue;
      }
      path.append(path.isEmpty() ? 'M' : 'L').append(Svg.format("%.2f %.2f", x, y));
      lastX = x;
      lastY = y;
    }
    return path.toString();
  }

  /** Position at a time, along straight lines between the points. */
  static double at(List<PathPoint> points, double timeS) {
    PathPoint before = points.get(0);
    for (PathPoint point : points) {
      if (point.timeS() >= timeS) {
        double gap = point.timeS() - before.timeS();
        double share = gap > 0 ? (timeS - before.timeS()) / gap : 1;
        return before.position() + share * (point.position() - before.position());
      }
      before = point;
    }
    return before.position();
  }
}
