package tripline.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.develop.Stroke;
import tripline.job.Direction;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/**
 * A trip point against its target.
 *
 * @param target where it is meant to be
 * @param reference the contact it is read from: the cam's limit contact, else its first by order in
 *     the sheet, passing over contacts that did not change
 * @param opening trip point while opening, pooled
 * @param closing trip point while closing, pooled
 * @param deviation from the target on the judged approach, turns, + toward open; empty where it was
 *     not exercised or the stop is not known
 * @param decision guard-banded; undecided where the readings cannot be relied on
 * @param probability of conformity, 0 to 1
 * @param differential opening minus closing trip point, turns; its common parts cancel
 * @param silent full strokes over which no contact of the cam changed
 */
public record CamJudgement(
    TripTarget target,
    Optional<ContactSeen> reference,
    Optional<Pooled> opening,
    Optional<Pooled> closing,
    Optional<Estimate> deviation,
    Decision decision,
    OptionalDouble probability,
    Optional<Estimate> differential,
    List<Stroke> silent) {

  static CamJudgement of(
      TripTarget target, Optional<ContactSeen> reference, List<Stroke> silent, ReadingTrust trust) {
    Optional<Track> track = reference.flatMap(r -> r.track(target.edge()));
    Optional<Pooled> opening = track.flatMap(t -> t.pooled(Direction.OPENING));
    Optional<Pooled> closing = track.flatMap(t -> t.pooled(Direction.CLOSING));
    Optional<Pooled> judged = target.from().approach() == Direction.OPENING ? opening : closing;
    Optional<Estimate> deviation = judged.flatMap(p -> target.deviation(p.mean()));
    Optional<Limits> limits = target.limits();
    Decision decision = silent.isEmpty() || !trust.holds() ? Decision.UNDECIDED : Decision.REJECT;
    OptionalDouble probability = OptionalDouble.empty();
    if (deviation.isPresent() && limits.isPresent() && trust.holds()) {
      Estimate off = deviation.orElseThrow();
      decision = silent.isEmpty() ? Conformity.decide(off, limits.orElseThrow()) : Decision.REJECT;
      probability = OptionalDouble.of(Conformity.probability(off, limits.orElseThrow()));
    }
    Optional<Estimate> differential =
        opening.flatMap(o -> closing.map(c -> o.mean().minus(c.mean())));
    return new CamJudgement(
        target,
        reference,
        opening,
        closing,
        deviation,
        decision,
        probability,
        differential,
        List.copyOf(silent));
  }

  /** The trip point pooled in one direction. */
  public Optional<Pooled> pooled(Direction direction) {
    return direction == Direction.OPENING ? opening : closing;
  }

  /** The trip point on the approach it is judged on. */
  public Optional<Pooled> judged() {
    return pooled(target.from().approach());
  }
}
