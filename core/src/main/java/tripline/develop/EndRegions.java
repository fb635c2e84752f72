package tripline.develop;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.measure.Estimate;
import tripline.sample.ContactState;
import tripline.travel.Leg;
import tripline.travel.Survey;
import tripline.travel.TravelMap;

/**
 * Tells full strokes: from one end region to the other. An end region is where the end's limit
 * contact has tripped, or what lies within backoff and tolerance of the hard stop. A stop that is
 * not known is where the sheet's span has it from the other one, or, where that is not known
 * either, the furthest any stroke went.
 */
final class EndRegions {
  /** A full stroke covers at least this share of the span, or of the longest stroke. */
  private static final double LEAST_SHARE = 0.8;

  private final Survey survey;
  private final TravelMap map;
  private final double lowest;
  private final double highest;

  EndRegions(Survey survey, TravelMap map) {
    this.survey = survey;
    this.map = map;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Leg leg : survey.legs()) {
      double to = map.x(leg.recording(), leg.to(), leg.direction()).orElse(Double.NaN);
      double from = map.x(leg.recording(), leg.from(), leg.direction()).orElse(Double.NaN);
      if (!Double.isNaN(to)) {
        low = Math.min(low, Math.min(from, to));
        high = Math.max(high, Math.max(from, to));
      }
    }
    lowest = low;
    highest = high;
  }

  Stroke.Extent extent(Leg leg, double from, double to) {
    double span =
        map.coordinate()
            .span()
            .map(Estimate::value)
            .orElse(survey.sheet().travel().spanTurns().orElse(highest - lowest));
    Direction direction = leg.direction();
    boolean leaves = isAt(direction.other().toward(), leg, leg.startNs(), from);
    boolean reaches = isAt(direction.toward(), leg, leg.endNs(), to);
    if (leaves && reaches) {
      boolean covers = Math.abs(to - from) >= LEAST_SHARE * span;
      return covers ? Stroke.Extent.FULL : Stroke.Extent.PART;
    }
    return leaves ? Stroke.Extent.FROM_END : reaches ? Stroke.Extent.TO_END : Stroke.Extent.PART;
  }

  private boolean isAt(End end, Leg leg, long timeNs, double x) {
    return hasTripped(end, leg, timeNs) || isNear(end, x);
  }

  private boolean hasTripped(End end, Leg leg, long timeNs) {
    List<Integer> moved =
        survey.channels().limits(end).stream()
            .filter(c -> survey.passages().stream().anyMatch(p -> p.channel() == c))
            .toList();
    return moved.stream()
        .map(c -> survey.sheet().channels().contacts().get(c))
        .map(
            name ->
                new ContactTimeline(survey.recordings().get(leg.recording()).trace(), name)
                    .at(timeNs))
        .anyMatch(state -> state.equals(Optional.of(ContactState.OPEN)));
  }

  private boolean isNear(End end, double x) {
    EndSetting setting = survey.sheet().end(end);
    double region = setting.backoffTurns() + setting.toleranceTurns();
    double stop = map.stop(end).map(Estimate::value).orElseGet(() -> expected(end));
    return (stop - x) * end.approach().sign() <= region;
  }

  private double expected(End end) {
    OptionalDouble span = survey.sheet().travel().spanTurns();
    Optional<Estimate> other = map.stop(end.other());
    if (span.isPresent() && other.isPresent()) {
      return other.get().value() + end.approach().sign() * span.getAsDouble();
    }
    return end == End.CLOSED ? lowest : highest;
  }
}
