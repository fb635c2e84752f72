package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.travel.Leg;
import tripline.travel.Passage;
import tripline.travel.Survey;
import tripline.travel.TravelMap;

/** Gives every settled change its stroke and its place in travel. */
final class Trips {
  private static final double NS_PER_S = 1e9;

  private Trips() {}

  static List<Trip> of(Survey survey, TravelMap map, List<Stroke> strokes) {
    List<Trip> trips = new ArrayList<>();
    for (Passage passage : survey.passages()) {
      Trip trip = trip(survey, map, passage);
      trips.add(survey.channels().contact(trip.channel()).isPresent() ? trip : held(trip, strokes));
    }
    return trips;
  }

  /**
   * A position contact changes because the drive moves; a contactor pulls in while the lost motion
   * is still to be taken up: no further back than where its stroke began.
   */
  private static Trip held(Trip trip, List<Stroke> strokes) {
    Optional<Stroke> stroke =
        strokes.stream()
            .filter(s -> s.recording() == trip.recording() && s.number() == trip.stroke())
            .filter(s -> !Double.isNaN(s.from()))
            .findFirst();
    if (stroke.isEmpty() || trip.x().isEmpty()) {
      return trip;
    }
    Estimate x = trip.x().get();
    double back = (stroke.get().from() - x.value()) * stroke.get().direction().sign();
    return back <= 0
        ? trip
        : new Trip(
            trip.recording(),
            trip.stroke(),
            trip.setting(),
            trip.channel(),
            trip.to(),
            trip.direction(),
            trip.atRest(),
            trip.timeS(),
            trip.reading(),
            Optional.of(x.plus(stroke.get().from() - x.value())),
            trip.change());
  }

  private static Trip trip(Survey survey, TravelMap map, Passage passage) {
    List<Leg> legs = survey.legs(passage.recording());
    long firstNs = survey.recordings().get(passage.recording()).trace().firstNs();
    Optional<Estimate> x =
        passage
            .reading()
            .flatMap(reading -> map.x(passage.recording(), reading, travelling(passage, legs)));
    return new Trip(
        passage.recording(),
        passage.atRest() ? -1 : stroke(legs, passage),
        passage.setting(),
        passage.channel(),
        passage.change().to(),
        passage.direction(),
        passage.atRest(),
        (passage.change().timeNs() - firstNs) / NS_PER_S,
        passage.reading(),
        x,
        passage.change());
  }

  /** The leg that holds the change, else the nearest one in its direction. */
  private static int stroke(List<Leg> legs, Passage passage) {
    long timeNs = passage.change().timeNs();
    int nearest = -1;
    long best = Long.MAX_VALUE;
    for (Leg leg : legs) {
      boolean sameWay = passage.direction().map(d -> d == leg.direction()).orElse(true);
      long away = Math.max(0, Math.max(leg.startNs() - timeNs, timeNs - leg.endNs()));
      if (sameWay && away < best && leg.setting() == passage.setting()) {
        best = away;
        nearest = leg.number();
      }
    }
    return passage.direction().isEmpty() && best > 0 ? -1 : nearest;
  }

  /** At rest the play stays taken up as the last travel left it. */
  private static Direction travelling(Passage passage, List<Leg> legs) {
    Direction last = legs.isEmpty() ? Direction.CLOSING : legs.get(0).direction();
    for (Leg leg : legs) {
      if (leg.startNs() <= passage.change().timeNs()) {
        last = leg.direction();
      }
    }
    return passage.direction().orElse(last);
  }
}
