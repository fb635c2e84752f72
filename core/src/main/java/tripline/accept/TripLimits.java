package tripline.accept;

import java.util.Optional;
import tripline.assess.TripTarget;
import tripline.develop.Development;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.TripPlan;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/**
 * What the deviation of a trip point from its target may be. A limit contact has to keep its end's
 * backoff as well, which a sheet may state otherwise than the cam's trip: both bind.
 */
final class TripLimits {
  private TripLimits() {}

  static Optional<Limits> of(TripTarget target, boolean limitContact, Development development) {
    Optional<Limits> own = target.limits();
    if (own.isEmpty() || !limitContact) {
      return own;
    }
    return Optional.of(both(own.orElseThrow(), backoff(target, development)));
  }

  /** Limits that contradict each other: the cam's stand, and the end's own decision rejects. */
  private static Limits both(Limits cam, Limits end) {
    double lower = Math.max(cam.lower(), end.lower());
    double upper = Math.min(cam.upper(), end.upper());
    return lower <= upper ? new Limits(lower, upper) : cam;
  }

  private static Limits backoff(TripTarget target, Development development) {
    EndSetting end = development.sheet().end(target.from());
    double further = end.backoffTurns() - distance(target, development);
    double centre = target.from() == End.CLOSED ? further : -further;
    return Limits.around(centre, end.toleranceTurns());
  }

  /** How far the target lies from its stop, turns. */
  private static double distance(TripTarget target, Development development) {
    TripPlan plan = target.plan();
    if (plan.unit() == TripPlan.Unit.TURNS) {
      return plan.distance();
    }
    double span =
        development
            .coordinate()
            .span()
            .map(Estimate::value)
            .orElse(development.sheet().travel().spanTurns().orElse(0));
    return plan.distance() / 100 * span;
  }
}
