package tripline.harness.rehearse.valve;

import java.util.List;
import tripline.job.End;

/**
 * A cam as built.
 *
 * @param name as the sheet names it
 * @param points its one trip point, or the two of a closed window, lower first
 * @param differentialTurns how much further open it trips while opening, &gt;= 0
 */
public record CamBuild(String name, List<Point> points, double differentialTurns) {
  public CamBuild {
    points = List.copyOf(points);
  }

  /**
   * One trip point.
   *
   * @param from the end it is measured from; judged on the approach to it
   * @param tripTurns x at which it trips on that approach, as built
   * @param targetTurns x at which it should
   * @param toleranceTurns how far it may be off
   */
  public record Point(End from, double tripTurns, double targetTurns, double toleranceTurns) {}

  /** x at which a point trips while closing. */
  double closingTurns(int point) {
    Point p = points.get(point);
    return p.from() == End.CLOSED ? p.tripTurns() : p.tripTurns() - differentialTurns;
  }
}
