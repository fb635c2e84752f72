package tripline.harness.report.record;

import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.AcceptanceWords;
import tripline.harness.report.FigureText;
import tripline.harness.report.StandOutWords;
import tripline.harness.report.StrokeNumbers;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.OutlierResult;
import tripline.result.AcceptanceResult.SeriesResult;
import tripline.result.Result;

/** What several strokes say, as tables and notes of a record. */
final class AcceptanceTables {
  private AcceptanceTables() {}

  static Fields of(Result result, AcceptanceResult accepted) {
    AcceptanceWords words = new AcceptanceWords(accepted);
    StandOutWords standing = new StandOutWords(result, accepted);
    return new Fields()
        .text("asked", words.asked())
        .list("trips", accepted.trips().stream().map(AcceptanceTables::trip).toList())
        .lines("reasons", "reason", words.reasons())
        .lines("outliers", "outlier", standing.outliers())
        .lines("moves", "move", standing.moves())
        .lines(
            "notes",
            "note",
            Stream.of(
                    sentence("Inside", words.inside()),
                    sentence("", words.factors()),
                    sentence("Widened", words.common()),
                    sentence("Left out", words.aside()))
                .filter(n -> !n.isEmpty())
                .toList())
        .list("series", accepted.series().stream().map(s -> series(result, s, standing)).toList())
        .text("repeatability", sentence("", words.repeatability()));
  }

  private static String sentence(String label, String words) {
    if (words.isEmpty()) {
      return "";
    }
    return label.isEmpty() ? words + "." : label + ": " + words + ".";
  }

  private static Fields trip(AcceptedTrip t) {
    @Nullable Double half = t.mean() == null || t.to() == null ? null : t.to() - t.mean();
    return new Fields()
        .text("cam", t.edge() == null ? t.cam() : t.cam() + " " + t.edge())
        .text("direction", t.direction())
        .text("n", Integer.toString(t.strokes()))
        .text("s", uncertainty(t.sd()))
        .text("k", t.factor() == null ? "-" : AcceptanceWords.factor(t.factor()))
        .text("scatter", plusMinus(t.scatterHalf()))
        .text("common", plusMinus(t.commonHalf()))
        .text("interval", half == null ? "-" : FigureText.interval(t.mean(), half))
        .text("target", FigureText.target(t.target(), t.tolerance()))
        .text("inside", AcceptanceWords.inside(t))
        .text("decision", t.required() ? FigureText.word(t.decision()) : "not wired");
  }

  private static Fields series(Result result, SeriesResult s, StandOutWords standing) {
    double known =
        Math.max(s.sd() == null ? 0 : s.sd(), s.measurementSd() == null ? 0 : s.measurementSd());
    return new Fields()
        .text("contact", s.edge() == null ? s.contact() : s.contact() + " " + s.edge())
        .text("direction", s.direction())
        .text("n", Integer.toString(s.strokes()))
        .text("mean", s.mean() == null ? "-" : FigureText.value(s.mean(), known))
        .text("s", uncertainty(s.sd()) + (standing.mark(s).isEmpty() ? "" : " " + standing.mark(s)))
        .text("range", uncertainty(s.range()))
        .text("r", uncertainty(s.limit()))
        .text("outlier", outlier(result, s.outlier()))
        .text(
            "drift",
            s.drift() == null
                ? "-"
                : FigureText.signed(s.drift().perStroke(), s.drift().u())
                    + " ("
                    + FigureText.probability(s.drift().probability())
                    + ")")
        .text(
            "step",
            s.step() == null
                ? "-"
                : FigureText.signed(s.step().size(), s.step().u())
                    + " after "
                    + s.step().after()
                    + " ("
                    + FigureText.probability(s.step().probability())
                    + ")");
  }

  /** Farthest stroke, its statistic and the critical value at 1 %. */
  private static String outlier(Result result, @Nullable OutlierResult outlier) {
    return outlier == null
        ? "-"
        : "stroke %d: %s (%s)"
            .formatted(
                StrokeNumbers.of(result, outlier.recording(), outlier.stroke()),
                FigureText.value(outlier.g(), 0.01),
                FigureText.value(outlier.criticalOne(), 0.01));
  }

  private static String uncertainty(@Nullable Double figure) {
    return figure == null ? "-" : FigureText.uncertainty(figure);
  }

  private static String plusMinus(@Nullable Double half) {
    return half == null ? "-" : "± " + FigureText.uncertainty(half);
  }
}
