package tripline.harness.report;

import java.io.IOException;
import java.util.List;
import tripline.result.Result.Adjust;
import tripline.result.Result.CamResult;

/** Trip points in the result file. */
final class CamJson {
  private CamJson() {}

  static void write(CamResult cam, JsonOut out) throws IOException {
    out.text("cam", cam.cam());
    out.text("edge", cam.edge());
    out.number("trip", cam.trip());
    out.number("u", cam.u());
    out.number("u95", cam.u95());
    out.number("target", cam.target());
    out.number("tolerance", cam.tolerance());
    out.number("target_percent", cam.targetPercent());
    out.text("from", cam.from());
    out.decision("decision", cam.decision());
    out.number("probability", cam.probability());
    out.measured("differential", cam.differential());
    out.number("strokes", cam.strokes());
    out.number("spread", cam.spread());
    out.number("opening", cam.opening());
    out.number("closing", cam.closing());
    out.parts(cam.estimate());
    out.object("adjust", cam.adjust(), CamJson::adjust);
  }

  private static void adjust(Adjust adjust, JsonOut out) throws IOException {
    out.number("turns", adjust.turns());
    out.number("degrees", adjust.degrees());
    out.text("words", adjust.words());
    out.any("steps", List.copyOf(adjust.steps()));
  }
}
