package tripline.job;

import java.util.OptionalDouble;

/** A closed window's two trip points against each other. */
final class WindowSense {
  private WindowSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (int i = 0; i < sheet.cams().size(); i++) {
      Cam cam = sheet.cams().get(i);
      if (cam.isWindow()) {
        window(sheet, i, cam, remarks);
      }
    }
  }

  private static void window(JobSheet sheet, int index, Cam cam, Remarks remarks) {
    TripPlan lower = cam.trips().get(0);
    TripPlan upper = cam.trips().get(1);
    String path = Remarks.cam(index, "trip[1]");
    String first = Remarks.cam(index, "trip[0]");
    OptionalDouble scale = span(sheet, lower, upper);
    if (scale.isEmpty()) {
      remarks.doubt(
          path,
          "whether the trip points of cam \"%s\" stand in order cannot be told without a span"
              .formatted(cam.name()),
          "travel.span");
      return;
    }
    double span = scale.getAsDouble();
    double gap = upper.positionTurns(span) - lower.positionTurns(span);
    double bands = upper.toleranceTurns(span) + lower.toleranceTurns(span);
    if (gap <= 0) {
      remarks.error(
          path,
          "the trip points of cam \"%s\" are reversed, expected the one nearer the closed stop"
                  .formatted(cam.name())
              + " first",
          first,
          "travel.span");
    } else if (gap <= bands) {
      remarks.error(
          path,
          "the tolerances of the two trip points of cam \"%s\" overlap, expected a gap between"
                  .formatted(cam.name())
              + " them",
          first,
          "travel.span");
    }
  }

  /** A span that puts both points on one scale: the sheet's, or any where it does not matter. */
  private static OptionalDouble span(JobSheet sheet, TripPlan lower, TripPlan upper) {
    if (sheet.travel().spanTurns().isPresent()) {
      return sheet.travel().spanTurns();
    }
    if (lower.unit() != upper.unit()) {
      return OptionalDouble.empty();
    }
    boolean anySpan = lower.unit() == TripPlan.Unit.PERCENT || lower.from() == upper.from();
    return anySpan ? OptionalDouble.of(100) : OptionalDouble.empty();
  }
}
