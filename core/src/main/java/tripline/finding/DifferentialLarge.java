package tripline.finding;

import java.util.Locale;
import java.util.OptionalDouble;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/** {@code differential-large}: one cam's differential beyond the sheet for certain. */
final class DifferentialLarge implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    OptionalDouble most = assessment.sheet().travel().differentialTurns();
    if (most.isEmpty()) {
      return;
    }
    Limits limits = Limits.atMost(most.getAsDouble());
    for (CamJudgement cam : assessment.judged().cams()) {
      cam.differential()
          .filter(d -> Conformity.decide(d, limits) == Decision.REJECT)
          .ifPresent(d -> sink.onFinding(finding(cam, d, most.getAsDouble())));
    }
  }

  private static Finding finding(CamJudgement cam, Estimate differential, double most) {
    return Draft.of(Code.DIFFERENTIAL_LARGE)
        .cam(cam.target().cam())
        .evidence("differential", differential)
        .evidence("limit", most)
        .says(
            String.format(
                Locale.ROOT,
                "%s changes %s apart between opening and closing, more than the %s of the sheet.",
                Text.capital(Text.cam(cam.target())),
                Text.turns(differential),
                Amounts.turns(most)),
            "Check the cam and its contact blocks for wear or a wrong block; set the trip point on"
                + " the approach that counts.");
  }
}
