package tripline.harness.report;

import java.io.IOException;
import tripline.result.Result.Backoff;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;

/** Both ends in the result file. */
final class EndJson {
  private EndJson() {}

  static void write(EndsResult ends, JsonOut out) throws IOException {
    out.object("closed", ends.closed(), EndJson::end);
    out.object("open", ends.open(), EndJson::end);
  }

  private static void end(EndResult end, JsonOut out) throws IOException {
    out.object("backoff", end.backoff(), EndJson::backoff);
    out.text("stopped_by", end.stoppedBy());
    out.measured("coast", end.coast());
    out.measured("margin", end.margin());
    out.decision("margin_decision", end.marginDecision());
    out.number("margin_probability", end.marginProbability());
    out.decision("decision", end.decision());
  }

  private static void backoff(Backoff backoff, JsonOut out) throws IOException {
    out.number("value", backoff.value());
    out.number("u", backoff.u());
    out.number("u95", backoff.u95());
    out.number("target", backoff.target());
    out.number("tolerance", backoff.tolerance());
    out.decision("decision", backoff.decision());
    out.number("probability", backoff.probability());
    out.parts(backoff.estimate());
  }
}
