package tripline.finding;

import java.util.OptionalDouble;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/** {@code lost-motion-large}: lost motion beyond the sheet for certain. */
final class LostMotionLarge implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    OptionalDouble most = assessment.sheet().travel().lostMotionTurns();
    if (most.isPresent()) {
      Limits limits = Limits.atMost(most.getAsDouble());
      assessment
          .development()
          .coordinate()
          .lostMotion()
          .filter(l -> Conformity.decide(l, limits) == Decision.REJECT)
          .ifPresent(l -> sink.onFinding(finding(l, most.getAsDouble())));
    }
  }

  private static Finding finding(Estimate lost, double most) {
    return Draft.of(Code.LOST_MOTION_LARGE)
        .evidence("lost_motion", lost)
        .evidence("limit", most)
        .says(
            String.format(
                "Between handwheel and drive %s are lost on turning back, more than the %s of the"
                    + " sheet; a differential that all cams share is in this figure.",
                Text.turns(lost), Amounts.turns(most)),
            "Check couplings, keys and the worm for play before relying on the backoffs.");
  }
}
