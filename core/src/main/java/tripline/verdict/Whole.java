package tripline.verdict;

import java.util.List;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.assess.ContactJudgement;
import tripline.assess.SettingJudgement;
import tripline.finding.Finding;
import tripline.finding.Severity;
import tripline.measure.Decision;

/**
 * Decision of the whole: reject if anything required is rejected or a finding is a fault; else
 * undecided if anything required is undecided; else accept. Both ends are required, and every
 * contact and trip point that is wired; spares and cams that carry nothing else are not.
 */
final class Whole {
  private Whole() {}

  static Decision decide(Assessment assessment, List<Finding> findings) {
    SettingJudgement judged = assessment.judged();
    Decision decision = judged.closed().decision().and(judged.open().decision());
    for (CamJudgement cam : judged.cams()) {
      decision = judged.isWired(cam) ? decision.and(cam.decision()) : decision;
    }
    for (ContactJudgement contact : judged.contacts()) {
      decision = contact.isWired() ? decision.and(contact.decision()) : decision;
    }
    boolean fault = findings.stream().anyMatch(f -> f.severity() == Severity.FAULT);
    return fault ? Decision.REJECT : decision;
  }
}
