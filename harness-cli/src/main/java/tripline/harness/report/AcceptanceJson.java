package tripline.harness.report;

import java.io.IOException;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.BothResult;
import tripline.result.AcceptanceResult.DriftResult;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.PointResult;
import tripline.result.AcceptanceResult.RepeatabilityResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.AcceptanceResult.StandOutResult;
import tripline.result.AcceptanceResult.StepResult;
import tripline.result.AcceptanceResult.WorstResult;

/** What strokes say together, in the result file. */
final class AcceptanceJson {
  private AcceptanceJson() {}

  static void write(AcceptanceResult accepted, JsonOut out) throws IOException {
    out.decision("decision", accepted.decision());
    out.open("asked");
    out.number("strokes", accepted.strokesAsked());
    out.number("confidence", accepted.confidence());
    out.number("share", accepted.share());
    out.number("factor", accepted.askedFactor());
    out.close();
    out.open("strokes");
    out.number("opening", accepted.opening());
    out.number("closing", accepted.closing());
    out.close();
    out.open("more_strokes");
    out.number("opening", accepted.moreOpening());
    out.number("closing", accepted.moreClosing());
    out.close();
    out.list("trips", accepted.trips(), AcceptanceJson::trip);
    out.list("series", accepted.series(), AcceptanceJson::series);
    out.list("stands_out", accepted.standOuts(), AcceptanceJson::standOut);
    out.object("repeatability", accepted.repeatability(), AcceptanceJson::repeatability);
  }

  private static void trip(AcceptedTrip trip, JsonOut out) throws IOException {
    out.text("cam", trip.cam());
    out.text("edge", trip.edge());
    out.text("contact", trip.contact());
    out.text("direction", trip.direction());
    out.truth("required", trip.required());
    out.number("strokes", trip.strokes());
    out.number("aside", trip.aside());
    out.number("mean", trip.mean());
    out.number("s", trip.sd());
    out.number("target", trip.target());
    out.number("tolerance", trip.tolerance());
    out.number("lower", trip.lower());
    out.number("upper", trip.upper());
    out.number("factor", trip.factor());
    out.number("scatter_half", trip.scatterHalf());
    out.number("common_half", trip.commonHalf());
    out.partList("common_parts", trip.commonParts());
    out.number("from", trip.from());
    out.number("to", trip.to());
    out.decision("decision", trip.decision());
    out.text("reason", trip.reason());
    out.number("strokes_needed", trip.strokesNeeded());
    out.number("supported_share", trip.supportedShare());
    out.object("both_directions", trip.both(), AcceptanceJson::both);
  }

  private static void both(BothResult both, JsonOut out) throws IOException {
    out.number("reversal", both.reversal());
    out.number("reversal_u", both.reversalU());
    out.number("repeatability", both.repeatability());
  }

  private static void series(SeriesResult series, JsonOut out) throws IOException {
    out.text("contact", series.contact());
    out.text("cam", series.cam());
    out.text("edge", series.edge());
    out.text("direction", series.direction());
    out.number("n", series.strokes());
    out.number("mean", series.mean());
    out.number("s", series.sd());
    out.number("range", series.range());
    out.number("r", series.limit());
    out.number("measurement_s", series.measurementSd());
    out.list("trips", series.points(), AcceptanceJson::point);
    out.object("outlier", series.outlier(), AcceptanceJson::outlier);
    out.object("drift", series.drift(), AcceptanceJson::drift);
    out.object("step", series.step(), AcceptanceJson::step);
  }

  private static void standOut(StandOutResult found, JsonOut out) throws IOException {
    out.text("kind", found.kind());
    out.text("contact", found.contact());
    out.text("cam", found.cam());
    out.text("edge", found.edge());
    out.text("direction", found.direction());
    out.number("turns", found.turns());
    out.number("chance", found.chance());
  }

  private static void point(PointResult point, JsonOut out) throws IOException {
    out.number("recording", point.recording());
    out.number("stroke", point.stroke());
    out.number("position", point.position());
    out.truth("counted", point.counted());
  }

  private static void outlier(OutlierResult outlier, JsonOut out) throws IOException {
    out.number("recording", outlier.recording());
    out.number("stroke", outlier.stroke());
    out.number("position", outlier.position());
    out.number("g", outlier.g());
    out.number("critical_5", outlier.criticalFive());
    out.number("critical_1", outlier.criticalOne());
    out.text("grade", outlier.grade());
  }

  private static void drift(DriftResult drift, JsonOut out) throws IOException {
    out.number("per_stroke", drift.perStroke());
    out.number("u", drift.u());
    out.number("dof", drift.dof());
    out.number("chance", drift.probability());
  }

  private static void step(StepResult step, JsonOut out) throws IOException {
    out.number("after", step.after());
    out.number("size", step.size());
    out.number("u", step.u());
    out.number("dof", step.dof());
    out.number("chance", step.probability());
  }

  private static void repeatability(RepeatabilityResult r, JsonOut out) throws IOException {
    out.number("s_r", r.sd());
    out.number("dof", r.dof());
    out.number("r", r.limit());
    out.number("factor", r.limitFactor());
    out.text("basis", r.basis());
    out.object("worst", r.worst(), AcceptanceJson::worst);
  }

  private static void worst(WorstResult worst, JsonOut out) throws IOException {
    out.text("contact", worst.contact());
    out.text("direction", worst.direction());
    out.number("s", worst.sd());
    out.number("cochran", worst.statistic());
    out.number("critical_1", worst.critical());
    out.number("series", worst.series());
  }
}
