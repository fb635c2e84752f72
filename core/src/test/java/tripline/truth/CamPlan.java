package tripline.truth;

import java.util.List;

/**
 * A cam as built.
 *
 * @param name cam name
 * @param closingTrips x at which it trips while closing: one, or two for a closed window (lower
 *     first)
 * @param differential how much further open it trips while opening, turns, &gt;= 0
 * @param scatter standard deviation of its trip points from stroke to stroke, turns
 * @param driftPerStroke move of its trip points per stroke, turns, + toward open
 */
public record CamPlan(
    String name,
    List<Double> closingTrips,
    double differential,
    double scatter,
    double driftPerStroke) {

  public CamPlan {
    closingTrips = List.copyOf(closingTrips);
  }

  /** A steady cam with one trip point. */
  public static CamPlan at(String name, double closingTrip, double differential) {
    return new CamPlan(name, List.of(closingTrip), differential, 0, 0);
  }

  /** The same cam with its trip points moved. */
  public CamPlan moved(double byTurns) {
    return new CamPlan(
        name,
        closingTrips.stream().map(c -> c + byTurns).toList(),
        differential,
        scatter,
        driftPerStroke);
  }

  public CamPlan withDifferential(double turns) {
    return new CamPlan(name, closingTrips, turns, scatter, driftPerStroke);
  }

  public CamPlan withScatter(double turns) {
    return new CamPlan(name, closingTrips, differential, turns, driftPerStroke);
  }

  public CamPlan withDrift(double turnsPerStroke) {
    return new CamPlan(name, closingTrips, differential, scatter, turnsPerStroke);
  }
}
