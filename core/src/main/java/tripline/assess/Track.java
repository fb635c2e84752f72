package tripline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.measure.Moments;

/**
 * The changes of a contact at one trip point, at most one a stroke.
 *
 * @param edge which trip point of its cam
 * @param crossings in order of the strokes
 */
public record Track(Edge edge, List<Crossing> crossings) {

  public Track {
    crossings = List.copyOf(crossings);
  }

  /** The changes in one direction of travel. */
  public List<Crossing> toward(Direction direction) {
    return crossings.stream().filter(c -> c.direction() == direction).toList();
  }

  /** The trip point in one direction, pooled over strokes; empty where it was not exercised. */
  public Optional<Pooled> pooled(Direction direction) {
    List<Crossing> seen = toward(direction);
    return seen.isEmpty()
        ? Optional.empty()
        : Optional.of(Pooled.of(seen.stream().map(Crossing::x).toList()));
  }

  /** Of several candidates in one stroke, keeps the one nearest to where the others are. */
  static Track nearest(Edge edge, List<Crossing> candidates, List<Crossing> strays) {
    if (candidates.isEmpty()) {
      return new Track(edge, List.of());
    }
    double centre = median(candidates);
    List<Crossing> kept = new ArrayList<>();
    for (Crossing candidate : candidates) {
      int last = kept.size() - 1;
      if (last < 0 || !kept.get(last).stroke().equals(candidate.stroke())) {
        kept.add(candidate);
      } else if (distance(candidate, centre) < distance(kept.get(last), centre)) {
        strays.add(kept.set(last, candidate));
      } else {
        strays.add(candidate);
      }
    }
    return new Track(edge, kept);
  }

  /** Spread over the strokes of one direction and of the other, turns. */
  double range() {
    double range = 0;
    for (Direction direction : Direction.values()) {
      double[] values = toward(direction).stream().mapToDouble(c -> c.x().value()).toArray();
      range = values.length == 0 ? range : Math.max(range, Moments.of(values).range());
    }
    return range;
  }

  private static double distance(Crossing crossing, double centre) {
    return Math.abs(crossing.x().value() - centre);
  }

  private static double median(List<Crossing> crossings) {
    List<Double> sorted =
        crossings.stream().map(c -> c.x().value()).sorted(Comparator.naturalOrder()).toList();
    return sorted.get(sorted.size() / 2);
  }
}
