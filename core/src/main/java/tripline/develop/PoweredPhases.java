package tripline.develop;

import java.util.Optional;
import tripline.job.Direction;
import tripline.job.PositionChannel;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.reduce.Movement;
import tripline.reduce.Stopping;
import tripline.travel.Leg;
import tripline.travel.PartNames;
import tripline.travel.Passage;
import tripline.travel.StopEvents;
import tripline.travel.Survey;
import tripline.travel.TravelMap;

/** Phases of a motor stroke: run, onset of deceleration, standstill, coast. */
final class PoweredPhases {
  private static final double NS_PER_S = 1e9;
  private static final String STANDSTILL = "standstill";

  private final Survey survey;
  private final TravelMap map;
  private final PositionChannel position;

  PoweredPhases(Survey survey, TravelMap map) {
    this.survey = survey;
    this.map = map;
    position = survey.sheet().position();
  }

  Stroke.Powered of(Leg leg, StopEvents events, boolean powerLost) {
    Stopping stopping = events.stopping();
    Optional<Estimate> still = stillReading(leg);
    return new Stroke.Powered(
        run(leg),
        stopping.hasOnset() ? time(leg, stopping.onsetNs(), stopping.onsetUNs()) : Optional.empty(),
        figure(stopping.onsetReading(), "onset", stopping.onsetU(), Shape.NORMAL)
            .filter(f -> stopping.hasOnset())
            .flatMap(f -> map.x(leg.recording(), shifted(leg, f), leg.direction())),
        stopping.stood() ? time(leg, stopping.stillNs(), stopping.stillUNs()) : Optional.empty(),
        still.flatMap(s -> map.x(leg.recording(), s, leg.direction())),
        still.flatMap(s -> events.limit().flatMap(limit -> coast(leg, limit, s))),
        powerLost);
  }

  private Estimate run(Leg leg) {
    Movement.Speed speed = leg.mainMove().run();
    double perUnit = Math.abs(position.turnsPerUnit());
    double turnsPerS = Math.abs(speed.unitsPerS()) * perUnit;
    return figure(turnsPerS, PartNames.FIT, speed.u() * perUnit, Shape.NORMAL)
        .map(
            run ->
                run.with(
                    Part.common(PartNames.SCALE, run.value() * position.scaleU(), Shape.NORMAL)))
        .orElse(Estimate.exact(0));
  }

  private Optional<Estimate> time(Leg leg, long atNs, long uNs) {
    long firstNs = survey.recordings().get(leg.recording()).trace().firstNs();
    return figure((atNs - firstNs) / NS_PER_S, "time", uNs / NS_PER_S, Shape.NORMAL);
  }

  /**
   * Standstill in unwrapped readings: the mean of the rest that follows, which is known far better
   * than the moment it began; a coarse channel stands somewhere within its count.
   */
  private Optional<Estimate> stillReading(Leg leg) {
    if (leg.rest().isPresent()) {
      Movement.Rest rest = leg.rest().get();
      return figure(rest.reading(), STANDSTILL, rest.u(), rest.grain().law());
    }
    Stopping stopping = leg.stopping();
    return stopping.stood()
        ? figure(stopping.stillReading(), STANDSTILL, stopping.stillU(), Shape.NORMAL)
            .map(still -> shifted(leg, still))
        : Optional.empty();
  }

  /**
   * Run-on from the limit contact's change to standstill, positive in the direction of travel.
   * Stop, lost motion and registration are the same for both and cancel.
   */
  private Optional<Estimate> coast(Leg leg, Passage limit, Estimate still) {
    double sign = leg.direction() == Direction.OPENING ? 1 : -1;
    return limit
        .reading()
        .map(changed -> survey.turns(still.minus(changed)).times(sign))
        .map(
            coast ->
                coast.with(
                    Part.common(
                        PartNames.SCALE, sign * coast.value() * position.scaleU(), Shape.NORMAL)));
  }

  private Estimate shifted(Leg leg, Estimate reading) {
    return reading.plus(survey.shift(leg.recording()));
  }

  private static Optional<Estimate> figure(double value, String part, double u, Shape shape) {
    return Double.isFinite(value) && Double.isFinite(u)
        ? Optional.of(Estimate.of(value, Part.own(part, Math.abs(u), shape)))
        : Optional.empty();
  }
}
