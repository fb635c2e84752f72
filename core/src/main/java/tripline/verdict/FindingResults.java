package tripline.verdict;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import tripline.finding.Finding;
import tripline.result.Result.FindingResult;

/** Findings as the result writes them. */
final class FindingResults {
  private FindingResults() {}

  static FindingResult of(Finding finding) {
    return new FindingResult(
        finding.code().word(),
        finding.severity().word(),
        names(finding.contacts()),
        names(finding.cams()),
        finding.recording().isPresent() ? finding.recording().getAsInt() : null,
        finding.stroke().isPresent() ? finding.stroke().getAsInt() : null,
        Figures.number(finding.timeS()),
        finding.message(),
        finding.evidence(),
        finding.action());
  }

  private static @Nullable String names(Set<String> names) {
    return names.isEmpty() ? null : String.join(", ", names);
  }
}
