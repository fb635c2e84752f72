package tripline.harness.jobfile;

import tripline.job.Acceptance;
import tripline.job.JobIdentity;
import tripline.job.TravelPlan;

/** {@code [job]}, {@code [travel]} and {@code [acceptance]}: what is at stake. */
final class JobSection {
  /** Far beyond any valve; what is larger is a slip of the decimal point. */
  static final double MOST_TURNS = 100_000;

  private static final Range TURNS = Range.from(0, MOST_TURNS, "turns");
  private static final Range SOME_TURNS = Range.above(0, MOST_TURNS, "turns");
  private static final Range SECONDS = Range.above(0, 100_000, "s");
  private static final Range STROKES = Range.from(2, 1000, "");
  private static final Range SHARE = Range.between(0, 1, "");

  private JobSection() {}

  static JobIdentity identity(Section job, Notes notes) {
    if (job.isPresent()) {
      job.require("tag", "the valve's plant tag");
    } else {
      notes.unread("job");
    }
    JobIdentity identity =
        new JobIdentity(
            job.text("tag", TextRule.NAME).orElse("?"),
            job.text("description", TextRule.LINE).orElse(""),
            job.text("work_order", TextRule.LINE).orElse(""));
    job.close();
    return identity;
  }

  static TravelPlan travel(Section travel) {
    TravelPlan plan =
        new TravelPlan(
            travel.number("span", SOME_TURNS),
            travel.number("span_tolerance", SOME_TURNS),
            travel.number("lost_motion", TURNS),
            travel.number("differential", TURNS),
            travel.number("stroke_time_s", SECONDS),
            travel.number("stroke_time_tolerance_s", SECONDS));
    travel.close();
    return plan;
  }

  static Acceptance acceptance(Section acceptance) {
    Acceptance usual = Acceptance.DEFAULT;
    Acceptance stated =
        new Acceptance(
            acceptance.count("strokes", STROKES, usual.strokes()),
            acceptance.number("confidence", SHARE, usual.confidence()),
            acceptance.number("share", SHARE, usual.share()));
    acceptance.close();
    return stated;
  }
}
