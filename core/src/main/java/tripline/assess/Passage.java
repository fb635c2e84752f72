package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tripline.develop.Stroke;
import tripline.develop.Trip;

/**
 * What one contact channel did in one stroke.
 *
 * @param stroke the stroke
 * @param changes its settled changes in order of time, short there-and-backs left out
 * @param blips those there-and-backs
 */
public record Passage(Stroke stroke, List<Trip> changes, List<Blip> blips) {
  /**
   * A contact that goes back to where it was within this time did not pass a cam: a window takes
   * seconds to cross even under power.
   */
  static final double LONGEST_BLIP_S = 2.0;

  /**
   * A settled change that was taken back at once.
   *
   * @param there first change
   * @param back the one that undid it
   */
  public record Blip(Trip there, Trip back) {
    /** How long the other state lasted, s. */
    public double lengthS() {
      return back.timeS() - there.timeS();
    }
  }

  /**
   * Sorts true passages of a cam from there-and-backs: while a stroke holds more changes than its
   * cam has trip points, the shortest stay in between them is taken out.
   *
   * @param trips the channel's changes within the stroke
   * @param edges how many trip points the channel's cam has
   */
  static Passage of(Stroke stroke, List<Trip> trips, int edges) {
    List<Trip> left = new ArrayList<>();
    List<Blip> blips = new ArrayList<>();
    for (Burst burst : Burst.of(trips)) {
      if (burst.changes()) {
        left.add(burst.first());
      } else {
        blips.add(new Blip(burst.first(), burst.last()));
      }
    }
    while (left.size() > edges) {
      int at = shortest(left);
      if (at < 0 || left.get(at + 1).timeS() - left.get(at).timeS() > LONGEST_BLIP_S) {
        break;
      }
      Trip there = left.remove(at);
      blips.add(new Blip(there, left.remove(at)));
    }
    return new Passage(stroke, List.copyOf(left), List.copyOf(blips));
  }

  private static int shortest(List<Trip> trips) {
    int best = -1;
    double length = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < trips.size(); i++) {
      double stay = trips.get(i + 1).timeS() - trips.get(i).timeS();
      if (stay < length && trips.get(i).to() != trips.get(i + 1).to()) {
        length = stay;
        best = i;
      }
    }
    return best;
  }

  /** Changes at a known place of travel. */
  Stream<Crossing> crossings() {
    return changes.stream()
        .filter(t -> t.x().isPresent())
        .map(
            t ->
                new Crossing(
                    t, stroke, t.x().orElseThrow(), t.direction().orElse(stroke.direction())));
  }

  /** Whether the stroke runs from clear of one side of a place to clear of the other. */
  boolean passes(double x, double clearance) {
    double low = Math.min(stroke.from(), stroke.to());
    double high = Math.max(stroke.from(), stroke.to());
    return low < x - clearance && high > x + clearance;
  }
}
