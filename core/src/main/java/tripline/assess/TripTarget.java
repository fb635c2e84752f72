package tripline.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.End;
import tripline.job.TripPlan;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/**
 * Where a cam is meant to trip.
 *
 * @param cam cam name
 * @param edge which of its trip points
 * @param plan as the sheet states it, or the end's backoff where the sheet leaves it to that
 * @param x target in x, turns; empty where the stop it is measured from is not known
 * @param toleranceTurns symmetrical tolerance, turns; empty where per cent have no span to refer to
 * @param nominalX about where it lies by the sheet alone, turns: good enough to recognise a trip
 *     point by, never to judge it
 */
public record TripTarget(
    String cam,
    Edge edge,
    TripPlan plan,
    Optional<Estimate> x,
    OptionalDouble toleranceTurns,
    OptionalDouble nominalX) {

  /** The end it is measured from and judged on the approach to. */
  public End from() {
    return plan.from();
  }

  /** How far beyond its target a trip point lies, turns, + toward open; empty as {@link #x}. */
  public Optional<Estimate> deviation(Estimate trip) {
    return x.map(trip::minus);
  }

  /** What a deviation may be; empty where target or tolerance is not known. */
  public Optional<Limits> limits() {
    return x.isPresent() && toleranceTurns.isPresent()
        ? Optional.of(Limits.around(0, toleranceTurns.getAsDouble()))
        : Optional.empty();
  }

  /** Whether a deviation means that the contact changes too soon on the approach to its end. */
  public boolean isEarly(double deviationTurns) {
    return from() == End.CLOSED ? deviationTurns > 0 : deviationTurns < 0;
  }

  /** The target at the nominal place moved by an offset. */
  TripTarget shifted(double offsetTurns) {
    OptionalDouble moved =
        nominalX.isPresent()
            ? OptionalDouble.of(nominalX.getAsDouble() + offsetTurns)
            : OptionalDouble.empty();
    return new TripTarget(cam, edge, plan, x, toleranceTurns, moved);
  }
}
