package tripline.finding;

import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.EndJudgement;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.measure.Estimate;

/**
 * {@code coast-reaches-stop}: no margin left after coasting. A valve cannot coast past its stop, so
 * a stroke that reached it stands at a margin of about 0, not below: a margin that cannot be told
 * from 0 is taken for none, provided that it is known well enough to tell it from the backoff.
 */
final class CoastReachesStop implements Look {
  private static final double GUARD = 1.645;

  /** A hard stop, or torque after the limit contact, was seen: then 99.9 % one-sided. */
  private static final double GUARD_WITH_SIGN = 3;

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (End end : End.values()) {
      EndJudgement judged = assessment.judged().end(end);
      judged
          .margin()
          .filter(m -> none(judged, m))
          .ifPresent(m -> sink.onFinding(finding(judged, m)));
    }
  }

  private static boolean none(EndJudgement end, Estimate margin) {
    Optional<StoppedBy> by = end.worst().map(Stroke::stoppedBy);
    boolean sign = by.filter(s -> s == StoppedBy.HARD_STOP || s == StoppedBy.TORQUE).isPresent();
    double reach = (sign ? GUARD_WITH_SIGN : GUARD) * margin.u();
    boolean known = reach < end.setting().backoffTurns() / 2;
    return known ? margin.value() <= reach : margin.value() < -GUARD * margin.u();
  }

  private static Finding finding(EndJudgement end, Estimate margin) {
    Draft draft = Draft.of(Code.COAST_REACHES_STOP);
    end.limit().ifPresent(l -> draft.contact(l.contact()));
    end.worst().ifPresent(draft::stroke);
    return draft
        .evidence("end", end.end().word())
        .evidence("margin", margin)
        .evidence("coast", end.coast())
        .evidence("backoff", end.backoff())
        .says(
            String.format(
                "No margin is left at the %s end: the drive coasts %s from its limit contact and"
                    + " stands %s from the stop.",
                end.end().word(), end.coast().map(Text::turns).orElse("on"), Text.turns(margin)),
            "Set the limit cam earlier (larger backoff), or find out why the drive coasts so far"
                + " (brake, contactor drop-out, valve running light).");
  }
}
