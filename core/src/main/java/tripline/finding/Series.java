package tripline.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.assess.Crossing;
import tripline.assess.Track;
import tripline.job.Direction;
import tripline.measure.Moments;

/**
 * Trip points of one cam in one direction, stroke by stroke.
 *
 * @param cam the trip point
 * @param direction direction of travel
 * @param crossings in order of the strokes, at least one
 */
record Series(CamJudgement cam, Direction direction, List<Crossing> crossings) {

  /** Every trip point in every direction that was exercised. */
  static List<Series> all(Assessment assessment) {
    List<Series> all = new ArrayList<>();
    byTrip(assessment).forEach(all::addAll);
    return all;
  }

  /** The same, those of one trip point together. */
  static List<List<Series>> byTrip(Assessment assessment) {
    List<List<Series>> trips = new ArrayList<>();
    for (CamJudgement cam : assessment.judged().cams()) {
      Optional<Track> track = cam.reference().flatMap(r -> r.track(cam.target().edge()));
      List<Series> trip = new ArrayList<>();
      for (Direction direction : Direction.values()) {
        List<Crossing> crossings = track.map(t -> t.toward(direction)).orElse(List.of());
        if (!crossings.isEmpty()) {
          trip.add(new Series(cam, direction, crossings));
        }
      }
      if (!trip.isEmpty()) {
        trips.add(trip);
      }
    }
    return trips;
  }

  double[] values() {
    return crossings.stream().mapToDouble(c -> c.x().value()).toArray();
  }

  Moments moments() {
    return Moments.of(values());
  }

  /** What the measurement alone makes it scatter, turns. */
  double ownU() {
    return Math.sqrt(
        crossings.stream().mapToDouble(c -> c.x().ownU() * c.x().ownU()).average().orElse(0));
  }
}
