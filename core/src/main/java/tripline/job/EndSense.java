package tripline.job;

import java.util.OptionalDouble;

/** The settings of the two ends against the span, and against what can be known of them. */
final class EndSense {
  private EndSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (End end : End.values()) {
      if (!LimitSense.limits(sheet, end).isEmpty()) {
        alone(sheet, end, remarks);
      }
      if (sheet.end(end).seat() == Seat.TORQUE && sheet.torque(end).isEmpty()) {
        remarks.doubt(
            "ends." + end.word() + ".seat",
            "the %s end is seated on torque and no torque.%s channel is read: what stopped a stroke"
                    .formatted(end.word(), end.approach().word())
                + " is told from its deceleration only",
            "torque." + end.approach().word());
      }
    }
    together(sheet, remarks);
  }

  private static void alone(JobSheet sheet, End end, Remarks remarks) {
    EndSetting setting = sheet.end(end);
    String path = "ends." + end.word();
    if (setting.backoffTurns() - setting.toleranceTurns() <= 0) {
      remarks.doubt(
          path + ".tolerance",
          "the tolerance of the %s end reaches its hard stop: no backoff at all would be accepted"
              .formatted(end.word()),
          path + ".backoff");
    }
    // 1.645 is the one-sided 95 % point of the normal distribution: the default guard band.
    if (1.645 * setting.stopUTurns() >= setting.toleranceTurns()) {
      remarks.doubt(
          path + ".stop_u",
          "the stop of the %s end is known to %s turns (k = 1), the tolerance is %s: no backoff"
                  .formatted(
                      end.word(),
                      Remarks.figure(setting.stopUTurns()),
                      Remarks.figure(setting.toleranceTurns()))
              + " could be accepted",
          path + ".tolerance");
    }
  }

  private static void together(JobSheet sheet, Remarks remarks) {
    OptionalDouble given = sheet.travel().spanTurns();
    if (given.isEmpty()) {
      return;
    }
    double span = given.getAsDouble();
    for (End end : End.values()) {
      if (sheet.end(end).backoffTurns() >= span) {
        remarks.error(
            "ends." + end.word() + ".backoff",
            "a backoff of %s turns lies outside the span, expected less than %s"
                .formatted(Remarks.figure(sheet.end(end).backoffTurns()), Remarks.figure(span)),
            "travel.span");
        return;
      }
    }
    double sum = sheet.closed().backoffTurns() + sheet.open().backoffTurns();
    double bands = sheet.closed().toleranceTurns() + sheet.open().toleranceTurns();
    String[] rests = {"ends.closed.backoff", "travel.span"};
    if (sum >= span) {
      remarks.error(
          "ends.open.backoff",
          "the backoffs of both ends add up to %s turns, expected less than the span of %s"
              .formatted(Remarks.figure(sum), Remarks.figure(span)),
          rests);
    } else if (sum + bands >= span) {
      remarks.doubt(
          "ends.open.backoff",
          "the tolerances of both ends overlap in mid-travel: span %s turns, backoffs %s, tolerances"
                  .formatted(Remarks.figure(span), Remarks.figure(sum))
              + " %s".formatted(Remarks.figure(bands)),
          "ends.closed.backoff",
          "travel.span",
          "ends.closed.tolerance",
          "ends.open.tolerance");
    }
  }
}
