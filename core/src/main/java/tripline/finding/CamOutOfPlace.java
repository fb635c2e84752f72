package tripline.finding;

import java.util.Locale;
import tripline.assess.Adjustment;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.assess.TripTarget;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.measure.Estimate;

/** {@code cam-early}, {@code cam-late}: rejected, and on which side. */
final class CamOutOfPlace implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (CamJudgement cam : assessment.judged().cams()) {
      if (cam.decision() == Decision.REJECT && cam.silent().isEmpty()) {
        cam.deviation().ifPresent(off -> sink.onFinding(finding(assessment, cam, off)));
      }
    }
  }

  private static Finding finding(Assessment assessment, CamJudgement cam, Estimate off) {
    TripTarget target = cam.target();
    boolean early = target.isEarly(off.value());
    int away = target.from() == End.CLOSED ? 1 : -1;
    double wanted = fromEnd(assessment, target);
    Estimate distance = off.times(away).plus(wanted);
    double tolerance = target.toleranceTurns().orElse(0);
    String message =
        String.format(
            Locale.ROOT,
            "%s trips %s too %s while %s: %s from %s instead of %s \u00b1 %s.",
            Text.capital(Text.cam(target)),
            Amounts.turns(Math.abs(off.value())),
            early ? "early" : "late",
            target.from().approach().word(),
            Text.turns(distance),
            Text.stop(target.from()),
            Amounts.turns(wanted),
            Amounts.turns(tolerance));
    return Draft.of(early ? Code.CAM_EARLY : Code.CAM_LATE)
        .cam(target.cam())
        .evidence("edge", target.edge().word().orElse("only"))
        .evidence("deviation", off)
        .evidence("tolerance", tolerance)
        .evidence("distance_from_end", distance.value())
        .evidence("probability", cam.probability())
        .evidence("strokes", (long) cam.judged().map(p -> p.strokes()).orElse(0))
        .says(message, action(assessment, cam));
  }

  private static double fromEnd(Assessment assessment, TripTarget target) {
    double x = target.x().map(Estimate::value).orElse(0.0);
    if (target.from() == End.CLOSED) {
      return x;
    }
    double span =
        assessment
            .development()
            .coordinate()
            .span()
            .map(Estimate::value)
            .orElse(assessment.sheet().travel().spanTurns().orElse(0));
    return span - x;
  }

  private static String action(Assessment assessment, CamJudgement cam) {
    return Adjustment.of(cam, assessment.development())
        .map(Adjustment::words)
        .orElse("Set the cam again and record it again.");
  }
}
