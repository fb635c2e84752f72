package tripline.harness.report.record;

import tripline.measure.Decision;

/** A sign of its own shape for each decision: a tick, a cross, a question mark. */
final class VerdictSign {
  private VerdictSign() {}

  static String of(Decision decision) {
    String shape =
        switch (decision) {
          case ACCEPT -> "<path d=\"M3 14l7 7l15 -17\"/>";
          case REJECT -> "<path d=\"M4 4l20 20M24 4l-20 20\"/>";
          case UNDECIDED -> "<path d=\"M7 9a7 7 0 1 1 9 7c-2 1 -2 2 -2 4M14 24v1\"/>";
        };
    String colour = decision == Decision.REJECT ? "#ffffff" : "#1a1a1a";
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 28 28\" width=\"26\" height=\"26\""
        + " aria-hidden=\"true\"><g fill=\"none\" stroke=\""
        + colour
        + "\" stroke-width=\"4\">"
        + shape
        + "</g></svg>";
  }
}
