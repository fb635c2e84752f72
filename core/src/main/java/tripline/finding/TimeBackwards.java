package tripline.finding;

import java.util.List;
import tripline.assess.Assessment;
import tripline.travel.RecordingTrace;

/** {@code time-backwards}: one file stands as two recordings, because its time stepped back. */
final class TimeBackwards implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    List<RecordingTrace> recordings = assessment.development().recordings();
    for (int i = 1; i < recordings.size(); i++) {
      RecordingTrace before = recordings.get(i - 1);
      RecordingTrace here = recordings.get(i);
      if (here.name().equals(before.name()) && here.sha256().equals(before.sha256())) {
        double stepS = (before.trace().lastNs() - here.trace().firstNs()) * 1e-9;
        sink.onFinding(
            Draft.of(Code.TIME_BACKWARDS)
                .at(i, 0)
                .evidence("step_s", stepS)
                .evidence("file", here.name())
                .says(
                    String.format(
                        java.util.Locale.ROOT,
                        "Time steps back by %.3f s in %s; what comes before and after is analysed"
                            + " as two recordings.",
                        stepS,
                        here.name()),
                    "Check whether the logger's clock was set while it ran; repeat the stroke if a"
                        + " change falls on the step."));
      }
    }
  }
}
