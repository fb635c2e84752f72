package tripline.travel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/**
 * Pools the changes of each contact into landmarks. Changes of one sense and direction that lie
 * further apart than any trip point moves by itself are different places: an intermittent contact
 * gives a landmark of its own there and does not drag the true one along.
 */
final class Landmarks {
  /** Compares by hand: a record's own comparison is put together when it is first used. */
  private record Key(int frame, int setting, int channel, ContactState to, Direction direction) {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Key key
          && key.frame == frame
          && key.setting == setting
          && key.channel == channel
          && key.to == to
          && key.direction == direction;
    }

    @Override
    public int hashCode() {
      return Objects.hash(frame, setting, channel, to, direction);
    }
  }

  private Landmarks() {}

  /** Landmarks of the position contacts of all recordings, most often seen first. */
  static List<Landmark> of(Survey survey) {
    Map<Key, List<Estimate>> places = new LinkedHashMap<>();
    for (Passage passage : survey.passages()) {
      if (survey.isContact(passage)
          && passage.direction().isPresent()
          && passage.reading().isPresent()) {
        Key key =
            new Key(
                survey.frames().frame(passage.recording()),
                passage.setting(),
                passage.channel(),
                passage.change().to(),
                passage.direction().get());
        places
            .computeIfAbsent(key, k -> new ArrayList<>())
            .add(survey.turns(passage.reading().get()));
      }
    }
    List<Landmark> landmarks = new ArrayList<>();
    places.forEach(
        (key, all) -> {
          for (List<Estimate> place : Places.of(all)) {
            landmarks.add(
                new Landmark(
                    key.frame,
                    key.setting,
                    key.channel,
                    key.to,
                    key.direction,
                    Pool.repeated(place),
                    place.size()));
          }
        });
    landmarks.sort((a, b) -> Integer.compare(b.strokes(), a.strokes()));
    return landmarks;
  }
}
