package tripline.harness.report;

import java.util.List;
import tripline.job.End;
import tripline.result.Result;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;

/** An end of travel together with its name. */
record EndView(End end, EndResult result) {
  static List<EndView> both(Result result) {
    return both(result.ends());
  }

  static List<EndView> both(EndsResult ends) {
    return List.of(new EndView(End.CLOSED, ends.closed()), new EndView(End.OPEN, ends.open()));
  }

  static EndResult of(EndsResult ends, End end) {
    return end == End.CLOSED ? ends.closed() : ends.open();
  }

  String name() {
    return end.word();
  }
}
