package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Direction;
import tripline.job.SensorSide;
import tripline.sample.Drive;
import tripline.travel.Leg;
import tripline.travel.StopEvents;
import tripline.travel.Survey;
import tripline.travel.TravelMap;

/**
 * Turns legs into strokes. Turning points follow the play operator: after a turn back the drive
 * stays where it was until the lost motion is taken up.
 */
final class Strokes {
  private static final double NS_PER_S = 1e9;

  /**
   * A recording that begins within this of where the one before ended goes on from there, turns.
   */
  private static final double GOES_ON_TURNS = 0.05;

  private final Survey survey;
  private final TravelMap map;
  private final EndRegions regions;
  private final StrokeEnd strokeEnd;

  private Strokes(Survey survey, TravelMap map) {
    this.survey = survey;
    this.map = map;
    regions = new EndRegions(survey, map);
    strokeEnd = new StrokeEnd(survey, map);
  }

  static List<Stroke> of(Survey survey, TravelMap map) {
    return new Strokes(survey, map).all();
  }

  private List<Stroke> all() {
    List<Stroke> strokes = new ArrayList<>();
    OptionalDouble drive = OptionalDouble.empty();
    for (int r = 0; r < survey.recordings().size(); r++) {
      drive = survey.goesOn(r, GOES_ON_TURNS) ? drive : OptionalDouble.empty();
      for (Leg leg : survey.legs(r)) {
        Ends ends = ends(leg, drive);
        strokes.add(stroke(leg, ends));
        drive = Double.isNaN(ends.to) ? OptionalDouble.empty() : OptionalDouble.of(ends.to);
      }
    }
    return strokes;
  }

  /** x at begin and end; NaN where the recording has no place. */
  private record Ends(double from, double to) {}

  private Ends ends(Leg leg, OptionalDouble before) {
    OptionalDouble begin = map.x(leg.recording(), leg.from(), leg.direction());
    OptionalDouble end = map.x(leg.recording(), leg.to(), leg.direction());
    if (begin.isEmpty() || end.isEmpty()) {
      return new Ends(Double.NaN, Double.NaN);
    }
    double from = withinStops(begin.getAsDouble());
    double to = end.getAsDouble();
    if (before.isPresent() && survey.sheet().position().side() == SensorSide.HANDWHEEL) {
      from = before.getAsDouble();
      to = leg.direction() == Direction.OPENING ? Math.max(from, to) : Math.min(from, to);
    }
    return new Ends(from, to);
  }

  private double withinStops(double x) {
    double low = map.coordinate().closedStop().isPresent() ? Math.max(0, x) : x;
    return map.coordinate().span().map(span -> Math.min(span.value(), low)).orElse(low);
  }

  private Stroke stroke(Leg leg, Ends ends) {
    Drive drive = survey.drive(leg);
    long firstNs = survey.recordings().get(leg.recording()).trace().firstNs();
    StopEvents events = StopEvents.of(survey, leg);
    StopCause cause = strokeEnd.cause(leg, events);
    Stroke.StoppedBy stoppedBy = strokeEnd.stoppedBy(leg, cause);
    boolean powerLost = cause.isPowerLost() && stoppedBy != Stroke.StoppedBy.HARD_STOP;
    return new Stroke(
        leg.recording(),
        leg.number(),
        leg.setting(),
        drive,
        leg.direction(),
        ends.from,
        ends.to,
        (leg.startNs() - firstNs) / NS_PER_S,
        (leg.endNs() - firstNs) / NS_PER_S,
        regions.extent(leg, ends.from, ends.to),
        stoppedBy,
        drive == Drive.MOTOR
            ? Optional.of(new PoweredPhases(survey, map).of(leg, events, powerLost))
            : Optional.empty());
  }
}
