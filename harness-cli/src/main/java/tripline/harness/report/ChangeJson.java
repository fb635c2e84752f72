package tripline.harness.report;

import java.io.IOException;
import tripline.result.Result.ChangeResult;

/** Settled changes in the result file. */
final class ChangeJson {
  private ChangeJson() {}

  static void write(ChangeResult change, JsonOut out) throws IOException {
    out.number("recording", change.recording());
    out.number("stroke", change.stroke());
    out.number("setting", change.setting());
    out.text("contact", change.contact());
    out.text("cam", change.cam());
    out.text("to", change.to());
    out.text("direction", change.direction());
    out.truth("at_rest", change.atRest());
    out.number("time_s", change.timeS());
    out.number("reading", change.reading());
    out.number("reading_u", change.readingU());
    out.number("position", change.position());
    out.number("u", change.u());
    out.number("bounces", change.bounces());
    out.number("settle_s", change.settleS());
    out.number("u95", change.estimate() == null ? null : (Double) change.estimate().u95());
    out.parts(change.estimate());
  }
}
