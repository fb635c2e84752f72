package tripline.finding;

import java.util.OptionalDouble;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;

/** {@code span-off}: measured span outside the sheet for certain. */
final class SpanOff implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    OptionalDouble span = assessment.sheet().travel().spanTurns();
    OptionalDouble tolerance = assessment.sheet().travel().spanToleranceTurns();
    if (span.isPresent() && tolerance.isPresent()) {
      Limits limits = Limits.around(span.getAsDouble(), tolerance.getAsDouble());
      assessment
          .development()
          .coordinate()
          .span()
          .filter(s -> Conformity.decide(s, limits) == Decision.REJECT)
          .ifPresent(s -> sink.onFinding(finding(s, span.getAsDouble(), tolerance.getAsDouble())));
    }
  }

  private static Finding finding(Estimate span, double want, double most) {
    return Draft.of(Code.SPAN_OFF)
        .evidence("span", span)
        .evidence("expected", want)
        .evidence("tolerance", most)
        .says(
            String.format(
                "The travel between the stops is %s, expected %s \u00b1 %s.",
                Text.turns(span), Amounts.turns(want), Amounts.turns(most)),
            span.value() < want
                ? "Find out whether a stop was not reached or something is in the way, or whether"
                    + " the sheet belongs to another valve."
                : "Find out whether the sheet belongs to another valve, or a stop has moved.");
  }
}
