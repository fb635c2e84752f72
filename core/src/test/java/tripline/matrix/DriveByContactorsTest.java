package tripline.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.cases.Case;
import tripline.cases.WriteRecordings;
import tripline.develop.Explanation;
import tripline.result.Result;
import tripline.result.Result.RecordingResult;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;
import tripline.verdict.Verdict;

/**
 * Nobody says what moved the valve, but the contactors were read: every case comes out as where it
 * was said, stroke by stroke.
 */
class DriveByContactorsTest {
  static Stream<Case> cases() {
    return WriteRecordings.cases().stream()
        .filter(c -> c.command() == Case.Command.CHECK)
        .filter(c -> c.sheet().motorClosing().isPresent() && c.sheet().motorOpening().isPresent());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void comesOutAsWhereItWasSaid(Case it) {
    List<RecordingTrace> said = Answer.traces(it.sheet(), it.recordings(), sink -> sink);
    List<RecordingTrace> unsaid = said.stream().map(DriveByContactorsTest::unsaid).toList();
    Result where = Verdict.of(Explanation.of(said, it.sheet(), Optional.empty()));
    Result result = Verdict.of(Explanation.of(unsaid, it.sheet(), Optional.empty()));
    assertThat(result.recordings().stream().map(RecordingResult::strokes).toList())
        .isEqualTo(where.recordings().stream().map(RecordingResult::strokes).toList());
    assertThat(result.travel()).isEqualTo(where.travel());
    assertThat(result.ends()).isEqualTo(where.ends());
    assertThat(result.cams()).isEqualTo(where.cams());
    assertThat(result.findings()).isEqualTo(where.findings());
    assertThat(result.decision()).isEqualTo(where.decision());
  }

  /** With the wrong guess about the whole, which must not matter. */
  private static RecordingTrace unsaid(RecordingTrace said) {
    return new RecordingTrace(
        said.name(),
        said.sha256(),
        said.drive() == Drive.HAND ? Drive.MOTOR : Drive.HAND,
        RecordingTrace.Told.BY_CONTACTORS,
        said.zero(),
        said.trace());
  }
}
