package tripline.harness.report.drawing;

import java.util.Optional;
import tripline.result.Result;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.MotorResult;
import tripline.result.Result.StrokeResult;

/**
 * The time a powered stroke ran on: from the change of its end's limit contact to standstill.
 *
 * @param fromS the change, s
 * @param fromX x there, turns
 * @param toS standstill, s
 * @param toX x there, turns
 */
record Coast(double fromS, double fromX, double toS, double toX) {
  static Optional<Coast> of(Result result, int recording, StrokeResult stroke) {
    MotorResult motor = stroke.motor();
    if (motor == null || motor.standstillS() == null || motor.standstillPosition() == null) {
      return Optional.empty();
    }
    double toS = motor.standstillS().value();
    double toX = motor.standstillPosition().value();
    String role = "limit-" + stroke.direction();
    return result.changes().stream()
        .filter(c -> c.recording() == recording && isIn(c, stroke) && isOf(result, c, role))
        .filter(c -> c.to().equals("open") && c.position() != null && c.timeS() < toS)
        .reduce((a, b) -> b)
        .map(c -> new Coast(c.timeS(), SeenTrip.position(c), toS, toX));
  }

  private static boolean isIn(ChangeResult change, StrokeResult stroke) {
    return change.stroke() != null && change.stroke() == stroke.number();
  }

  private static boolean isOf(Result result, ChangeResult change, String role) {
    return result.contacts().stream()
        .anyMatch(k -> k.contact().equals(change.contact()) && k.role().equals(role));
  }
}
