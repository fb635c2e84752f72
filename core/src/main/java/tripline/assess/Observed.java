package tripline.assess;

import java.util.List;
import java.util.stream.Stream;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.develop.Trip;

/**
 * What one contact channel did in one setting.
 *
 * @param channel channel index
 * @param passages one a stroke of the setting, in order, quiet strokes included
 */
public record Observed(int channel, List<Passage> passages) {

  static Observed of(Development development, int setting, int channel, int edges) {
    List<Trip> trips = development.trips(channel, setting);
    return new Observed(
        channel,
        development.strokes().stream()
            .filter(s -> s.setting() == setting)
            .map(s -> Passage.of(s, trips.stream().filter(t -> within(t, s)).toList(), edges))
            .toList());
  }

  private static boolean within(Trip trip, Stroke stroke) {
    return trip.recording() == stroke.recording() && trip.stroke() == stroke.number();
  }

  /** Whether it changed at all. */
  public boolean changed() {
    return passages.stream().anyMatch(p -> !p.changes().isEmpty());
  }

  /** Its changes at known places of travel, in order. */
  public Stream<Crossing> crossings() {
    return passages.stream().flatMap(Passage::crossings);
  }
}
