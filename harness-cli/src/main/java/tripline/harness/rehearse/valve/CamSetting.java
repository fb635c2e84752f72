package tripline.harness.rehearse.valve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Cam;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobSheet;
import tripline.job.TripPlan;

/** Sets the cams of a valve that is being built, well or not so well. */
final class CamSetting {
  /** Nearer to a stop than this no cam can be set, turns. */
  private static final double LEAST_FROM_STOP = 0.04;

  private final JobSheet sheet;
  private final double span;
  private final Setting setting;
  private final Chance chance;

  private CamSetting(JobSheet sheet, double span, Setting setting, Chance chance) {
    this.sheet = sheet;
    this.span = span;
    this.setting = setting;
    this.chance = chance;
  }

  static List<CamBuild> build(JobSheet sheet, double span, Setting setting, Chance chance) {
    CamSetting set = new CamSetting(sheet, span, setting, chance);
    return sheet.cams().stream().map(set::cam).toList();
  }

  private CamBuild cam(Cam cam) {
    double most = sheet.travel().differentialTurns().orElse(0.15);
    double differential = most * chance.uniform(0.03, 0.15);
    Optional<End> limitOf = limitOf(cam);
    List<CamBuild.Point> points = new ArrayList<>();
    if (cam.trips().isEmpty()) {
      End end =
          limitOf.orElseThrow(() -> new IllegalArgumentException("cam without target " + cam));
      EndSetting asked = sheet.end(end);
      double target = end == End.CLOSED ? asked.backoffTurns() : span - asked.backoffTurns();
      points.add(point(end, target, asked.toleranceTurns(), true, differential));
    }
    for (TripPlan trip : cam.trips()) {
      points.add(
          point(
              trip.from(),
              trip.positionTurns(span),
              trip.toleranceTurns(span),
              limitOf.isPresent(),
              differential));
    }
    return new CamBuild(cam.name(), points, differential);
  }

  private Optional<End> limitOf(Cam cam) {
    return sheet.contacts().stream()
        .filter(c -> c.cam().equals(cam.name()))
        .flatMap(c -> c.role().limitOf().stream())
        .findFirst();
  }

  private CamBuild.Point point(
      End from, double target, double tolerance, boolean limit, double differential) {
    double off = chance.uniform(-0.3, 0.3);
    double wrong = chance.sign() * chance.uniform(1.6, 3.2);
    boolean picked = chance.uniform() < 0.25;
    if (setting == Setting.MIS_SET && (limit || picked)) {
      off = wrong;
    }
    double trip = target + off * tolerance;
    if (trip - differential < LEAST_FROM_STOP || trip + differential > span - LEAST_FROM_STOP) {
      trip = target - off * tolerance;
    }
    double least = LEAST_FROM_STOP + differential;
    trip = Math.max(least, Math.min(span - least, trip));
    return new CamBuild.Point(from, trip, target, tolerance);
  }
}
