package tripline.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tripline.accept.SettingAcceptance;
import tripline.accept.TripAcceptance;
import tripline.accept.Unequal;
import tripline.job.Acceptance;
import tripline.job.Direction;
import tripline.measure.Decision;
import tripline.measure.Repeatability;
import tripline.measure.ToleranceFactor;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.RepeatabilityResult;
import tripline.result.AcceptanceResult.WorstResult;

/** An acceptance as the result writes it. */
final class AcceptanceResults {
  private static final String BASIS =
      "r = 1.96 sqrt(2) s_r: two single strokes differ by less in 95 of 100 cases (ISO 5725-6)";

  private AcceptanceResults() {}

  static AcceptanceResult of(SettingAcceptance accepted) {
    Acceptance asked = accepted.asked();
    return new AcceptanceResult(
        accepted.decision(),
        asked.strokes(),
        asked.confidence(),
        asked.share(),
        ToleranceFactor.twoSided(asked.strokes(), asked.share(), asked.confidence()),
        accepted.opening(),
        accepted.closing(),
        more(accepted, Direction.OPENING),
        more(accepted, Direction.CLOSING),
        accepted.trips().stream().map(AcceptedTripResults::of).toList(),
        SeriesResults.of(accepted.series()),
        accepted.standOuts().stream().map(SeriesResults::of).toList(),
        repeatability(accepted));
  }

  /** Strokes of one direction that would settle all that is open in it. */
  private static @Nullable Integer more(SettingAcceptance accepted, Direction direction) {
    List<OptionalInt> open =
        accepted.trips().stream()
            .filter(t -> t.required() && t.decision() == Decision.UNDECIDED)
            .filter(t -> t.target().from().approach() == direction)
            .map(TripAcceptance::moreStrokes)
            .toList();
    if (open.stream().anyMatch(OptionalInt::isEmpty)) {
      return null;
    }
    return Stream.concat(Stream.of(OptionalInt.of(accepted.missing(direction))), open.stream())
        .mapToInt(OptionalInt::getAsInt)
        .max()
        .orElse(0);
  }

  private static RepeatabilityResult repeatability(SettingAcceptance accepted) {
    Repeatability pooled = accepted.repeatability();
    boolean known = pooled.dof() > 0;
    return new RepeatabilityResult(
        known ? pooled.sd() : null,
        pooled.dof(),
        known ? pooled.limit() : null,
        SeriesResults.LIMIT_FACTOR,
        BASIS,
        worst(accepted.unequal()));
  }

  private static @Nullable WorstResult worst(Optional<Unequal> unequal) {
    return unequal
        .map(
            u ->
                new WorstResult(
                    u.worst().contact().contact().name(),
                    u.worst().direction().word(),
                    u.worst().moments().sd(),
                    u.statistic(),
                    u.critical(),
                    u.series()))
        .orElse(null);
  }
}
