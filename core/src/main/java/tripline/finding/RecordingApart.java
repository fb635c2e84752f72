package tripline.finding;

import tripline.assess.Assessment;
import tripline.develop.Development;

/** {@code recording-apart}: what could not be brought together with the rest, and why. */
final class RecordingApart implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (Development.Doubt doubt : assessment.development().doubts()) {
      Draft draft = Draft.of(Code.RECORDING_APART);
      if (doubt.recording() >= 0) {
        draft.recording(doubt.recording());
      }
      sink.onFinding(
          draft.says(
              doubt.message(),
              "Record it again in one go with a hand stroke, with the position zero kept, or hand in"
                  + " a reference."));
    }
  }
}
