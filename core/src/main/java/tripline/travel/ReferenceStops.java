package tripline.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.End;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;

/**
 * Hard stops that an earlier result brings, in the readings of the ground frame: as they are where
 * the first recording kept the reference's position zero, else laid over it by common contact
 * changes.
 */
final class ReferenceStops {
  private final Survey survey;
  private final Reference reference;
  private final List<Caveat> caveats;

  ReferenceStops(Survey survey, Reference reference, List<Caveat> caveats) {
    this.survey = survey;
    this.reference = reference;
    this.caveats = caveats;
  }

  /**
   * @param ground frame whose readings the stops are wanted in
   * @param landmarks all landmarks
   */
  Map<End, HardStop> in(int ground, List<Landmark> landmarks) {
    Map<End, HardStop> stops = new EnumMap<>(End.class);
    offset(ground, landmarks)
        .ifPresent(
            offset -> {
              reference
                  .closedStop()
                  .ifPresent(s -> stops.put(End.CLOSED, stop(End.CLOSED, s, offset)));
              reference.openStop().ifPresent(s -> stops.put(End.OPEN, stop(End.OPEN, s, offset)));
            });
    return stops;
  }

  /** Turns to be added to the ground's to give the reference's. */
  private Optional<Estimate> offset(int ground, List<Landmark> landmarks) {
    boolean kept = survey.recordings().get(0).zero() == RecordingTrace.Zero.KEPT;
    if (kept && ground == 0) {
      return Optional.of(Estimate.exact(0));
    }
    List<Landmark> mine = landmarks.stream().filter(l -> l.frame() == ground).toList();
    int setting = mine.stream().mapToInt(Landmark::setting).min().orElse(0);
    Registration registration = Registration.of(survey, landmarks(setting), mine);
    if (registration instanceof Registration.Laid laid) {
      return Optional.of(Pool.shared(laid.offset(), PartNames.REGISTRATION_REFERENCE));
    }
    caveats.add(
        new Caveat(
            Caveat.Kind.REFERENCE_NOT_USED,
            survey.frames().firstRecording(ground),
            reference.name() + " is not used: " + ((Registration.Refused) registration).why()));
    return Optional.empty();
  }

  private List<Landmark> landmarks(int setting) {
    List<Landmark> landmarks = new ArrayList<>();
    for (Reference.Seen seen : merged()) {
      survey
          .channels()
          .channelOf(seen.contact())
          .ifPresent(
              channel ->
                  landmarks.add(
                      new Landmark(
                          -1,
                          setting,
                          channel,
                          seen.to(),
                          seen.direction(),
                          survey.turns(
                              Estimate.of(
                                  seen.reading(), Part.own(PartNames.FIT, seen.u(), Shape.NORMAL))),
                          1)));
    }
    return landmarks;
  }

  /** Several strokes of the reference make one landmark a contact, sense and direction. */
  private List<Reference.Seen> merged() {
    List<Reference.Seen> merged = new ArrayList<>();
    for (Reference.Seen seen : reference.changes()) {
      boolean done = merged.stream().anyMatch(m -> isSame(m, seen));
      if (!done) {
        List<Reference.Seen> all =
            reference.changes().stream().filter(s -> isSame(s, seen)).toList();
        double mean = all.stream().mapToDouble(Reference.Seen::reading).average().orElseThrow();
        double variance = all.stream().mapToDouble(s -> s.u() * s.u()).average().orElseThrow();
        double u = Math.sqrt(variance / all.size());
        merged.add(new Reference.Seen(seen.contact(), seen.to(), seen.direction(), mean, u));
      }
    }
    return merged;
  }

  private static boolean isSame(Reference.Seen a, Reference.Seen b) {
    return a.contact().equals(b.contact()) && a.to() == b.to() && a.direction() == b.direction();
  }

  private HardStop stop(End end, Reference.Stop stop, Estimate offset) {
    Estimate there =
        Estimate.of(stop.reading(), Part.common(PartNames.stop(end), stop.u(), Shape.NORMAL));
    double turnsPerUnit = survey.sheet().position().turnsPerUnit();
    return new HardStop(
        end, there.minus(offset.times(1 / turnsPerUnit)), HardStop.Source.REFERENCE);
  }
}
