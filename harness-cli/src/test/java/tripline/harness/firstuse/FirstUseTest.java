package tripline.harness.firstuse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tripline.StrokeAnalysis;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile;
import tripline.harness.recording.Recordings;
import tripline.measure.Decision;
import tripline.result.Result;

/**
 * What is analysed only to have been analysed goes the whole way, as an ordinary recording does.
 */
class FirstUseTest {
  @Test
  void theMadeUpRecordingIsAcceptedWithoutARemark() {
    JobFile job = JobFile.ofText("made up", MadeUpJob.SHEET);
    assertThat(job.doubts()).isEmpty();
    RecordingFile recording = Recordings.ofBytes("made up", MadeUpJob.recording(), "", job);
    assertThat(recording.notices()).isEmpty();
    Result result = StrokeAnalysis.of(job.sheet(), recording.traces(), Optional.empty());
    assertThat(result.decision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.findings()).isEmpty();
    assertThat(result.changes()).hasSize(6);
    assertThat(result.recordings().get(0).strokes()).hasSize(2).allMatch(s -> s.full());
  }

  @Test
  void everyFormOfTheAnswerCanBeMade() {
    for (List<String> args :
        List.of(List.of("check"), List.of("accept", "--quiet", "--json", "out.json"))) {
      assertThatCode(new FirstUse(args)::analyse).doesNotThrowAnyException();
    }
  }
}
