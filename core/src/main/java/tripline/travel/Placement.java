package tripline.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.End;
import tripline.measure.Estimate;
import tripline.measure.Part;

/**
 * Brings the recordings' position zeros together: one frame is the ground (the one that knows most
 * hard stops, the earliest of these), the others are laid over it by their common contact changes,
 * else by a hard stop both have touched, else they stay without a place.
 */
final class Placement {
  private final Survey survey;
  private final List<Landmark> landmarks;
  private final List<Caveat> caveats;
  private final List<Map<End, HardStop>> stops = new ArrayList<>();
  private final int ground;
  private final List<Optional<Estimate>> offsets = new ArrayList<>();

  Placement(Survey survey, List<Landmark> landmarks, List<Caveat> caveats) {
    this.survey = survey;
    this.landmarks = landmarks;
    this.caveats = caveats;
    HardStops finder = new HardStops(survey, caveats);
    int best = 0;
    for (int f = 0; f < survey.frames().count(); f++) {
      stops.add(finder.of(f));
      best = stops.get(f).size() > stops.get(best).size() ? f : best;
    }
    ground = best;
    for (int f = 0; f < survey.frames().count(); f++) {
      offsets.add(f == ground ? Optional.of(Estimate.exact(0)) : lay(f));
    }
  }

  /** The frame all others are laid over. */
  int ground() {
    return ground;
  }

  /** Hard stops known in the ground frame, from its own recordings. */
  Map<End, HardStop> stops() {
    return stops.isEmpty() ? new EnumMap<>(End.class) : stops.get(ground);
  }

  /** To be added to the turns of a frame to give those of the ground; empty: without a place. */
  Optional<Estimate> offset(int frame) {
    return offsets.get(frame);
  }

  private Optional<Estimate> lay(int frame) {
    int first = survey.frames().firstRecording(frame);
    Registration registration = Registration.of(survey, of(ground), of(frame));
    if (registration instanceof Registration.Laid laid) {
      return Optional.of(Pool.shared(laid.offset(), PartNames.registration(first)));
    }
    Optional<Estimate> byStop = byStop(frame, first);
    if (byStop.isEmpty()) {
      caveats.add(
          new Caveat(
              Caveat.Kind.RECORDING_WITHOUT_PLACE,
              first,
              ((Registration.Refused) registration).why()));
    }
    return byStop;
  }

  private Optional<Estimate> byStop(int frame, int first) {
    List<Estimate> found = new ArrayList<>();
    for (End end : End.values()) {
      HardStop here = stops.get(frame).get(end);
      HardStop there = stops.get(ground).get(end);
      if (here != null && there != null) {
        found.add(
            survey.turns(there.reading()).minus(survey.turns(renamed(here.reading(), first))));
      }
    }
    return found.isEmpty() ? Optional.empty() : Optional.of(Estimate.mean(found));
  }

  /** The same stop touched in another recording is another error. */
  private static Estimate renamed(Estimate stop, int recording) {
    return new Estimate(
        stop.value(),
        stop.parts().stream()
            .map(p -> new Part(p.name() + "/" + (recording + 1), p.u(), p.shape(), p.sharing()))
            .toList());
  }

  private List<Landmark> of(int frame) {
    return landmarks.stream().filter(l -> l.frame() == frame).toList();
  }
}
