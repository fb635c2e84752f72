package tripline.accept;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tripline.assess.TripTarget;
import tripline.job.Acceptance;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;
import tripline.measure.Moments;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.measure.ToleranceInterval;
import tripline.measure.TwoDirections;

/**
 * A trip point over its strokes, on the approach it is judged on.
 *
 * @param target where it is meant to be
 * @param required whether the decision of the whole needs it: a cam that carries nothing but spares
 *     is reported and does not count
 * @param series its strokes; empty where no contact of the cam was seen to change there
 * @param scatter of these; empty without a full stroke
 * @param limits what its deviation from the target may be, turns; empty without a target
 * @param interval statistical tolerance interval of the deviation, turns, what the strokes have in
 *     common left out; empty below two strokes or without a target
 * @param common mean deviation with the parts that all strokes share, and these alone
 * @param guard by how much those parts widen the interval on either side: their half-width at the
 *     confidence asked for, turns
 * @param decision what may be said
 * @param reason why it is not accepted
 * @param strokesNeeded how many strokes in all would settle it, should they scatter as these do;
 *     empty where no number up to {@value #MOST_STROKES} would, or another thing must be settled
 *     first
 * @param supportedShare share of future trips of which the strokes made do say, with the confidence
 *     asked for, that they fall within the limits; empty where they say nothing
 * @param both both directions, where each has two strokes
 */
public record TripAcceptance(
    TripTarget target,
    boolean required,
    Optional<TripSeries> series,
    Optional<SeriesScatter> scatter,
    Optional<Limits> limits,
    Optional<ToleranceInterval> interval,
    Optional<Estimate> common,
    double guard,
    Decision decision,
    Reason reason,
    OptionalInt strokesNeeded,
    OptionalDouble supportedShare,
    Optional<TwoDirections> both) {
  /** More strokes than this nobody makes for an acceptance. */
  public static final int MOST_STROKES = 100;

  /** Name of the part of the measurement's uncertainty that the scatter does not show. */
  public static final String MEASUREMENT = "measurement";

  /** A drift or step this unlikely by scatter alone is taken for one. */
  static final double SIGNIFICANCE = 0.01;

  /**
   * A movement, or an outlier, below this share of the tolerance is reported and left alone, as the
   * finding trip-drift has it.
   */
  static final double SHARE_OF_TOLERANCE = 0.25;

  /** What the decision is made from. */
  record Evidence(
      TripTarget target,
      boolean required,
      Optional<TripSeries> series,
      Optional<TripSeries> back,
      Optional<Limits> limits,
      Acceptance asked,
      boolean trusted) {}

  static TripAcceptance of(Evidence seen) {
    Optional<TripSeries> made = seen.series().filter(s -> s.n() > 0);
    Optional<SeriesScatter> scatter = made.map(s -> SeriesScatter.of(s, seen.back()));
    Optional<Estimate> deviation =
        made.flatMap(s -> seen.target().deviation(s.mean()).map(d -> common(s, d)));
    double guard =
        deviation.map(d -> d.coverage().halfWidth(seen.asked().confidence())).orElse(0.0);
    Optional<ToleranceInterval> interval =
        made.filter(s -> s.n() > 1 && seen.limits().isPresent())
            .map(s -> interval(s, deviation.orElseThrow().value(), seen.asked()));
    Settlement settled = Settlement.of(seen, scatter, interval, guard);
    OptionalDouble share =
        interval.isPresent() && seen.trusted()
            ? interval.orElseThrow().supportedShare(seen.limits().orElseThrow(), guard)
            : OptionalDouble.empty();
    return new TripAcceptance(
        seen.target(),
        seen.required(),
        seen.series(),
        scatter,
        seen.limits(),
        interval,
        deviation,
        guard,
        settled.decision(),
        settled.reason(),
        settled.strokesNeeded(),
        share,
        both(seen));
  }

  private static ToleranceInterval interval(TripSeries series, double mean, Acceptance asked) {
    return new ToleranceInterval(
        series.n(), mean, series.moments().sd(), asked.share(), asked.confidence());
  }

  /**
   * What all strokes share. Strokes that agree better than the measurement can have its error in
   * common as well (a coarse encoder errs alike at the same place): as much of it as does not show.
   */
  private static Estimate common(TripSeries series, Estimate deviation) {
    Estimate shared = deviation.commonOnly();
    if (series.n() < 2) {
      return shared;
    }
    double sd = series.moments().sd();
    double least = series.leastSd();
    return least <= sd
        ? shared
        : shared.with(Part.common(MEASUREMENT, Math.sqrt(least * least - sd * sd), Shape.NORMAL));
  }

  private static Optional<TwoDirections> both(Evidence seen) {
    List<Moments> two =
        seen.series().stream()
            .flatMap(s -> seen.back().stream().flatMap(b -> List.of(s, b).stream()))
            .filter(s -> s.n() > 1)
            .sorted((a, b) -> b.direction().sign() - a.direction().sign())
            .map(TripSeries::moments)
            .toList();
    return two.size() == 2
        ? Optional.of(new TwoDirections(two.get(0), two.get(1)))
        : Optional.empty();
  }

  /** Half-width of the interval that is held against the limits, turns; empty as the interval. */
  public OptionalDouble halfWidth() {
    return interval.isPresent()
        ? OptionalDouble.of(interval.orElseThrow().halfWidth() + guard)
        : OptionalDouble.empty();
  }

  /** How many strokes are missing to what would settle it; empty as {@code strokesNeeded}. */
  public OptionalInt moreStrokes() {
    int made = series.map(TripSeries::n).orElse(0);
    return strokesNeeded.isPresent()
        ? OptionalInt.of(strokesNeeded.getAsInt() - made)
        : OptionalInt.empty();
  }
}
