package tripline.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.cases.Recording;
import tripline.develop.Explanation;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.reduce.Trace;
import tripline.result.Result;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;
import tripline.verdict.Verdict;

/** The product without its files: from what a logger pushes to the result. */
final class Pipeline {
  private static final String NO_DIGEST = "0".repeat(64);

  private Pipeline() {}

  static ReductionSettings settings(JobSheet sheet) {
    return new ReductionSettings(
        sheet.channels(),
        sheet.settleNs(),
        sheet.position().skewNs(),
        sheet.position().resolution(),
        sheet.position().modulus(),
        sheet.position().turnsPerUnit());
  }

  /** Result of one hand recording. */
  static Result result(JobSheet sheet, Trace trace) {
    return verdict(sheet, List.of(named("hand", Drive.HAND, "lost", trace)));
  }

  /** Result of a case. */
  static Result result(JobSheet sheet, List<Recording> recordings) {
    return result(sheet, recordings, Optional.empty());
  }

  /** Result of a case with stops from an earlier one. */
  static Result result(JobSheet sheet, List<Recording> recordings, Optional<Reference> reference) {
    return Verdict.of(Explanation.of(traces(sheet, recordings), sheet, reference));
  }

  /** Result of a case whose strokes are to be accepted together. */
  static Result accepted(JobSheet sheet, List<Recording> recordings) {
    return Verdict.accepting(Explanation.of(traces(sheet, recordings), sheet, Optional.empty()));
  }

  private static List<RecordingTrace> traces(JobSheet sheet, List<Recording> recordings) {
    List<RecordingTrace> traces = new ArrayList<>();
    for (Recording r : recordings) {
      Reduction reduction = new Reduction(settings(sheet));
      r.play(new Rewired(reduction, r.actuator().plan().channels(), sheet.channels()));
      traces.add(named(r.file(), r.drive(), r.zero(), reduction.finish()));
    }
    return traces;
  }

  private static RecordingTrace named(String name, Drive drive, String zero, Trace trace) {
    RecordingTrace.Zero kept =
        zero.equals("kept") ? RecordingTrace.Zero.KEPT : RecordingTrace.Zero.LOST;
    return new RecordingTrace(name, NO_DIGEST, drive, kept, trace);
  }

  private static Result verdict(JobSheet sheet, List<RecordingTrace> traces) {
    return Verdict.of(Explanation.of(traces, sheet, Optional.empty()));
  }
}
