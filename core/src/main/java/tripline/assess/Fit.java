package tripline.assess;

import java.util.List;

/**
 * How well the changes of a channel agree with a line of the chart.
 *
 * @param sameSense changes whose sense is the line's at the trip point they are nearest to
 * @param opposed changes of the other sense there
 * @param distance mean distance to the line's change of the same sense, turns; not finite where one
 *     has no counterpart or no place is known
 * @param mirrored the same with every sense turned over
 */
record Fit(int sameSense, int opposed, double distance, double mirrored) {

  static Fit of(List<Crossing> crossings, ChartLine line) {
    int same = 0;
    double distance = 0;
    double mirrored = 0;
    for (Crossing crossing : crossings) {
      double x = crossing.x().value();
      double direct = line.distance(x, crossing.closedAbove());
      double turned = line.distance(x, !crossing.closedAbove());
      boolean sense =
          line.edges().size() == 1
              ? line.closedAbove(line.edges().get(0).edge()) == crossing.closedAbove()
              : direct <= turned;
      same += sense ? 1 : 0;
      distance += direct;
      mirrored += turned;
    }
    int n = crossings.size();
    return new Fit(same, n - same, distance / n, mirrored / n);
  }

  /** Every change has the line's sense. */
  boolean agrees() {
    return opposed == 0 && sameSense > 0;
  }

  /** Every change has the opposite sense. */
  boolean opposes() {
    return sameSense == 0 && opposed > 0;
  }
}
