package tripline.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.cases.Case;
import tripline.cases.WriteRecordings;
import tripline.result.Result;
import tripline.result.Result.FindingResult;

/** Every recording case, judged: the decision and the faults and cautions its truth file states. */
class CasesJudgedTest {
  static Stream<Case> cases() {
    return WriteRecordings.cases().stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void comesOutAsItsTruthSays(Case it) {
    Result result = Answer.of(it);
    List<String> codes =
        result.findings().stream()
            .filter(f -> it.findings().contains(f.code()) || !f.severity().equals("note"))
            .map(FindingResult::code)
            .distinct()
            .toList();
    assertThat(codes)
        .as(it.name() + " " + result.findings())
        .containsExactlyInAnyOrderElementsOf(it.findings());
    assertThat(result.decision().name().toLowerCase(Locale.ROOT))
        .as(it.name() + " " + result.ends() + result.cams() + result.contacts())
        .isEqualTo(it.decision());
  }
}
