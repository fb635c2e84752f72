package tripline.verdict;

import java.util.Optional;
import tripline.assess.EndJudgement;
import tripline.assess.SettingJudgement;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.EndSetting;
import tripline.measure.Estimate;
import tripline.result.Result.Backoff;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.Measured;

/** Ends as the result writes them. */
final class EndResults {
  private EndResults() {}

  static EndsResult of(SettingJudgement setting) {
    return new EndsResult(of(setting.closed()), of(setting.open()));
  }

  private static EndResult of(EndJudgement end) {
    return new EndResult(
        backoff(end),
        end.stoppedBy().map(StoppedBy::word).orElse(null),
        Figures.measured(end.coast()),
        Figures.measured(end.margin()),
        end.marginDecision().orElse(null),
        Figures.number(end.marginProbability()),
        end.decision());
  }

  private static Backoff backoff(EndJudgement end) {
    EndSetting setting = end.setting();
    Optional<Estimate> backoff = end.backoff();
    return new Backoff(
        Figures.value(backoff),
        Figures.u(backoff),
        backoff.map(Figures::measured).map(Measured::u95).orElse(null),
        setting.backoffTurns(),
        setting.toleranceTurns(),
        end.backoffDecision(),
        Figures.number(end.probability()),
        Figures.measured(backoff));
  }
}
