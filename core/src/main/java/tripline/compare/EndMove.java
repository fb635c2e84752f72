package tripline.compare;

import tripline.job.End;
import tripline.result.Result.EndResult;

/**
 * An end of travel.
 *
 * @param end which
 * @param before the earlier result's figures
 * @param after the later result's
 * @param backoff turns, from the end's own stop
 * @param coast turns, of the stroke with the least margin
 * @param margin turns, of the same stroke
 */
public record EndMove(
    End end, EndResult before, EndResult after, Movement backoff, Movement coast, Movement margin) {

  EndMove judged(Family trips, Family figures) {
    return new EndMove(
        end, before, after, backoff.judged(trips), coast.judged(figures), margin.judged(figures));
  }
}
