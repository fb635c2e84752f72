package tripline.reduce;

import java.util.List;

/**
 * The path of the readings, thinned to a bounded number of points for drawing.
 *
 * @param points in order of time
 */
public record Outline(List<Point> points) {
  public Outline {
    points = List.copyOf(points);
  }

  /**
   * A point of the path.
   *
   * @param timeNs time, ns
   * @param reading reading about that time, reading units
   */
  public record Point(long timeNs, double reading) {}
}
