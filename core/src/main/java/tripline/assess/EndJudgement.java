package tripline.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.Seat;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/**
 * An end of travel against its setting.
 *
 * @param end which
 * @param setting as the sheet wants it
 * @param limit the end's limit contact
 * @param backoff hard stop to the limit contact's change on the approach, turns; empty where the
 *     stop is not known or the change was not exercised
 * @param backoffDecision guard-banded, against the sheet
 * @param probability of the backoff's conformity
 * @param powered motor strokes that came to this end, in order
 * @param worst the one among them with the least margin, or the last where none has a margin
 * @param coast of that stroke, turns
 * @param margin backoff less coast of that stroke, turns: what was left to the hard stop; only at
 *     an end that is to stop on limit
 * @param marginDecision guard-banded, against 0
 * @param marginProbability that some margin is left
 * @param decision of the end
 */
public record EndJudgement(
    End end,
    EndSetting setting,
    Optional<ContactSeen> limit,
    Optional<Estimate> backoff,
    Decision backoffDecision,
    OptionalDouble probability,
    List<Stroke> powered,
    Optional<Stroke> worst,
    Optional<Estimate> coast,
    Optional<Estimate> margin,
    Optional<Decision> marginDecision,
    OptionalDouble marginProbability,
    Decision decision) {

  static EndJudgement of(
      End end,
      EndSetting setting,
      Optional<ContactSeen> limit,
      Optional<Estimate> stop,
      List<Stroke> powered,
      ReadingTrust trust) {
    Optional<Estimate> change =
        limit
            .flatMap(l -> l.tracks().stream().findFirst().flatMap(t -> t.pooled(end.approach())))
            .map(Pooled::mean);
    Optional<Estimate> backoff = change.flatMap(x -> stop.map(s -> toStop(end, s, x)));
    Limits limits = Limits.around(setting.backoffTurns(), setting.toleranceTurns());
    Decision backoffDecision =
        backoff
            .filter(b -> trust.holds())
            .map(b -> Conformity.decide(b, limits))
            .orElse(Decision.UNDECIDED);
    Optional<Stroke> worst = worst(end, setting, stop, powered);
    Optional<Estimate> margin = worst.flatMap(w -> margin(end, setting, stop, w));
    Limits positive = Limits.atLeast(0);
    Optional<Decision> marginDecision =
        margin.map(m -> trust.holds() ? Conformity.decide(m, positive) : Decision.UNDECIDED);
    boolean onTorque =
        setting.seat() == Seat.LIMIT
            && powered.stream().anyMatch(s -> s.stoppedBy() == StoppedBy.TORQUE);
    Decision decision =
        backoffDecision
            .and(marginDecision.orElse(Decision.ACCEPT))
            .and(onTorque ? Decision.REJECT : Decision.ACCEPT);
    return new EndJudgement(
        end,
        setting,
        limit,
        backoff,
        backoffDecision,
        backoff.isPresent()
            ? OptionalDouble.of(Conformity.probability(backoff.orElseThrow(), limits))
            : OptionalDouble.empty(),
        List.copyOf(powered),
        worst,
        worst.flatMap(Stroke::powered).flatMap(Stroke.Powered::coast),
        margin,
        marginDecision,
        margin.isPresent()
            ? OptionalDouble.of(Conformity.probability(margin.orElseThrow(), positive))
            : OptionalDouble.empty(),
        decision);
  }

  private static Optional<Stroke> worst(
      End end, EndSetting setting, Optional<Estimate> stop, List<Stroke> powered) {
    Optional<Stroke> least =
        powered.stream()
            .filter(s -> margin(end, setting, stop, s).isPresent())
            .min(
                (a, b) ->
                    Double.compare(
                        margin(end, setting, stop, a).orElseThrow().value(),
                        margin(end, setting, stop, b).orElseThrow().value()));
    return least.isPresent() || powered.isEmpty()
        ? least
        : Optional.of(powered.get(powered.size() - 1));
  }

  /**
   * Margin of one stroke: backoff less coast is the distance from the hard stop to standstill, in
   * which the limit contact's own place cancels.
   */
  static Optional<Estimate> margin(
      End end, EndSetting setting, Optional<Estimate> stop, Stroke stroke) {
    if (setting.seat() != Seat.LIMIT || stop.isEmpty()) {
      return Optional.empty();
    }
    return stroke
        .powered()
        .filter(p -> p.coast().isPresent())
        .flatMap(Stroke.Powered::standstillX)
        .map(x -> toStop(end, stop.orElseThrow(), x));
  }

  /** Margin of a stroke to the end it ran to; empty where stop or coast is not known. */
  public static Optional<Estimate> margin(Development development, End end, Stroke stroke) {
    return margin(
        end,
        development.sheet().end(end),
        Targets.stop(development.coordinate(), development.sheet(), end),
        stroke);
  }

  private static Estimate toStop(End end, Estimate stop, Estimate x) {
    return end == End.CLOSED ? x.minus(stop) : stop.minus(x);
  }

  /** What stopped it: torque if it ever was, else as the last powered stroke; empty by hand. */
  public Optional<StoppedBy> stoppedBy() {
    if (powered.isEmpty()) {
      return Optional.empty();
    }
    boolean torque = powered.stream().anyMatch(s -> s.stoppedBy() == StoppedBy.TORQUE);
    return Optional.of(torque ? StoppedBy.TORQUE : powered.get(powered.size() - 1).stoppedBy());
  }
}
