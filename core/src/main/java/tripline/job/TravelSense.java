package tripline.job;

import java.util.OptionalDouble;

/** The figures of {@code [travel]} against each other. */
final class TravelSense {
  private TravelSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    TravelPlan travel = sheet.travel();
    if (travel.spanTurns().isEmpty()) {
      remarks.doubt("travel", "no span is stated: it is measured and not judged", "travel.span");
    }
    pair("span", travel.spanTurns(), travel.spanToleranceTurns(), "span_tolerance", remarks);
    pair(
        "stroke_time_s",
        travel.strokeTimeS(),
        travel.strokeTimeToleranceS(),
        "stroke_time_tolerance_s",
        remarks);
    below("lost_motion", travel.lostMotionTurns(), travel.spanTurns(), remarks);
    below("differential", travel.differentialTurns(), travel.spanTurns(), remarks);
  }

  private static void pair(
      String key,
      OptionalDouble value,
      OptionalDouble tolerance,
      String toleranceKey,
      Remarks remarks) {
    if (value.isEmpty() && tolerance.isPresent()) {
      remarks.doubt(
          "travel." + toleranceKey,
          "%s stands without %s: it is not judged".formatted(toleranceKey, key),
          "travel." + key);
    } else if (value.isPresent() && tolerance.isEmpty()) {
      remarks.doubt(
          "travel." + key,
          "%s stands without %s: it is not judged".formatted(key, toleranceKey),
          "travel." + toleranceKey);
    } else if (value.isPresent() && tolerance.orElse(0) >= value.getAsDouble()) {
      remarks.error(
          "travel." + toleranceKey,
          "%s is %s, expected less than %s, which is %s"
              .formatted(
                  toleranceKey,
                  Remarks.figure(tolerance.orElse(0)),
                  key,
                  Remarks.figure(value.getAsDouble())),
          "travel." + key);
    }
  }

  private static void below(
      String key, OptionalDouble value, OptionalDouble span, Remarks remarks) {
    if (value.isPresent() && span.isPresent() && value.getAsDouble() >= span.getAsDouble()) {
      remarks.error(
          "travel." + key,
          "%s is %s, expected less than the span of %s turns"
              .formatted(
                  key, Remarks.figure(value.getAsDouble()), Remarks.figure(span.getAsDouble())),
          "travel.span");
    }
  }
}
