package tripline.verdict;

import java.util.List;
import java.util.stream.IntStream;
import tripline.accept.SettingAcceptance;
import tripline.assess.Assessment;
import tripline.assess.SettingJudgement;
import tripline.develop.Development;
import tripline.develop.DevelopmentChart;
import tripline.develop.Setting;
import tripline.finding.Finding;
import tripline.finding.Findings;
import tripline.result.Result;
import tripline.result.Result.AsFound;
import tripline.result.Result.ContactResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.SettingResult;

/** The answer to a job: judges a development, looks for findings, decides the whole. */
public final class Verdict {
  private Verdict() {}

  /** The result of a development. */
  public static Result of(Development development) {
    return of(Assessment.of(development));
  }

  /** The result of a development whose strokes are to be accepted together. */
  public static Result accepting(Development development) {
    Assessment assessment = Assessment.of(development);
    return of(assessment).accepting(AcceptanceResults.of(SettingAcceptance.of(assessment)));
  }

  /** The result of a development that has been judged. */
  public static Result of(Assessment assessment) {
    Development development = assessment.development();
    List<Finding> seen = Findings.of(assessment);
    List<FindingResult> findings = seen.stream().map(FindingResults::of).toList();
    SettingJudgement judged = assessment.judged();
    return new Result(
        Whole.decide(assessment, seen),
        development.sheet().job().tag(),
        IntStream.range(0, development.recordings().size())
            .mapToObj(i -> RecordingResults.of(assessment, i))
            .toList(),
        TravelResults.of(development.coordinate(), development.sheet()),
        development.settings().stream().map(s -> setting(s, judged.number())).toList(),
        development.trips().stream().map(t -> ChangeResults.of(t, development.sheet())).toList(),
        judged.cams().stream().map(c -> CamResults.of(c, development)).toList(),
        contacts(judged, development),
        EndResults.of(judged),
        findings,
        assessment.settings().stream()
            .filter(s -> s.number() != judged.number())
            .map(s -> asFound(s, development))
            .toList());
  }

  private static SettingResult setting(Setting setting, int judged) {
    return new SettingResult(
        setting.number(),
        setting.recording(),
        setting.fromS(),
        setting.toS(),
        setting.number() == judged);
  }

  private static AsFound asFound(SettingJudgement setting, Development development) {
    return new AsFound(
        setting.number(),
        setting.cams().stream().map(c -> CamResults.of(c, development)).toList(),
        contacts(setting, development),
        EndResults.of(setting));
  }

  private static List<ContactResult> contacts(SettingJudgement setting, Development development) {
    DevelopmentChart chart = DevelopmentChart.of(development, setting.number());
    return setting.contacts().stream()
        .map(c -> ContactResults.of(c, development.sheet(), chart))
        .toList();
  }
}
