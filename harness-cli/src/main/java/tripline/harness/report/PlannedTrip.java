package tripline.harness.report;

/**
 * A trip point to draw.
 *
 * @param x where, turns from the closed stop
 * @param tolerance either side of it, turns
 */
public record PlannedTrip(double x, double tolerance) {
  PlannedTrip mirrored(double span) {
    return new PlannedTrip(span - x, tolerance);
  }
}
