package tripline.job;

/**
 * An intended trip point.
 *
 * @param from the end it is measured from; it is judged on the approach to that end
 * @param distance distance from that end's hard stop, in {@code unit}
 * @param tolerance symmetrical tolerance, in {@code unit}
 * @param unit turns of the handwheel, or per cent of span
 */
public record TripPlan(End from, double distance, double tolerance, Unit unit) {
  /** What distance and tolerance are counted in. */
  public enum Unit {
    TURNS,
    PERCENT
  }

  /** Distance from its end in turns, for a span in turns. */
  public double distanceTurns(double spanTurns) {
    return unit == Unit.TURNS ? distance : distance / 100.0 * spanTurns;
  }

  /** Tolerance in turns, for a span in turns. */
  public double toleranceTurns(double spanTurns) {
    return unit == Unit.TURNS ? tolerance : tolerance / 100.0 * spanTurns;
  }

  /** Travel coordinate of the trip point in turns from the closed stop, for a span in turns. */
  public double positionTurns(double spanTurns) {
    return from == End.CLOSED ? distanceTurns(spanTurns) : spanTurns - distanceTurns(spanTurns);
  }
}
