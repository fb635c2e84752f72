package tripline;

import java.util.List;
import java.util.Optional;
import tripline.develop.Explanation;
import tripline.job.JobSheet;
import tripline.result.Result;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;
import tripline.verdict.Verdict;

/** The explaining half as one call: reduced recordings and what was intended, to a result. */
public final class StrokeAnalysis {
  private StrokeAnalysis() {}

  /**
   * Analyses recordings of one actuator.
   *
   * @param sheet what was intended
   * @param recordings in order of time, at least one
   * @param reference hard stops from an earlier result, for ends these recordings did not touch
   * @throws IllegalArgumentException if there is no recording
   */
  public static Result of(
      JobSheet sheet, List<RecordingTrace> recordings, Optional<Reference> reference) {
    return Verdict.of(Explanation.of(recordings, sheet, reference));
  }

  /**
   * Analyses recordings of one actuator that is to be accepted: as {@link #of}, and what its full
   * strokes say together against the sheet's {@link JobSheet#acceptance}.
   *
   * @throws IllegalArgumentException if there is no recording
   */
  public static Result accepting(
      JobSheet sheet, List<RecordingTrace> recordings, Optional<Reference> reference) {
    return Verdict.accepting(Explanation.of(recordings, sheet, reference));
  }
}
