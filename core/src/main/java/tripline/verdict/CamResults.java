package tripline.verdict;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.assess.Adjustment;
import tripline.assess.CamJudgement;
import tripline.assess.Pooled;
import tripline.assess.TripTarget;
import tripline.develop.Development;
import tripline.job.TripPlan;
import tripline.measure.Estimate;
import tripline.result.Result.Adjust;
import tripline.result.Result.CamResult;
import tripline.result.Result.Measured;

/**
 * Trip points as the result writes them. The uncertainty beside a trip point is that of its
 * deviation from the target, so that value, u, target and tolerance give the probability again.
 */
final class CamResults {
  private CamResults() {}

  static CamResult of(CamJudgement cam, Development development) {
    TripTarget target = cam.target();
    Optional<Estimate> trip = cam.judged().map(Pooled::mean);
    Optional<Measured> estimate =
        trip.map(x -> Figures.measured(x.value(), cam.deviation().orElse(x)));
    return new CamResult(
        target.cam(),
        target.edge().word().orElse(null),
        Figures.value(trip),
        estimate.map(Measured::u).orElse(null),
        estimate.map(Measured::u95).orElse(null),
        Figures.value(target.x()),
        Figures.number(target.toleranceTurns()),
        percent(target),
        target.from().word(),
        cam.decision(),
        Figures.number(cam.probability()),
        Figures.measured(cam.differential()),
        cam.judged().map(Pooled::strokes).orElse(0),
        cam.judged().map(Pooled::range).orElse(null),
        Figures.value(cam.opening().map(Pooled::mean)),
        Figures.value(cam.closing().map(Pooled::mean)),
        estimate.orElse(null),
        adjust(cam, development));
  }

  private static @Nullable Double percent(TripTarget target) {
    return target.plan().unit() == TripPlan.Unit.PERCENT ? target.plan().distance() : null;
  }

  private static @Nullable Adjust adjust(CamJudgement cam, Development development) {
    return Adjustment.of(cam, development)
        .map(a -> new Adjust(a.turns(), a.degrees(), a.words(), a.steps()))
        .orElse(null);
  }
}
