package tripline.finding;

import java.util.List;
import java.util.OptionalDouble;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.measure.Estimate;
import tripline.sample.Drive;

/**
 * {@code stroke-time-off}: a full motor stroke that took longer or shorter than the sheet wants.
 */
final class StrokeTimeOff implements Look {
  private static final double GUARD = 1.645;

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    OptionalDouble expected = assessment.sheet().travel().strokeTimeS();
    OptionalDouble tolerance = assessment.sheet().travel().strokeTimeToleranceS();
    if (expected.isEmpty() || tolerance.isEmpty()) {
      return;
    }
    double want = expected.getAsDouble();
    double most = tolerance.getAsDouble();
    List<Stroke> off =
        assessment.development().strokes().stream()
            .filter(s -> s.setting() == assessment.judged().number() && whole(s))
            .filter(s -> Math.abs(time(s) - want) > most + GUARD * u(assessment, s))
            .sorted((a, b) -> Double.compare(-Math.abs(time(a) - want), -Math.abs(time(b) - want)))
            .toList();
    if (!off.isEmpty()) {
      sink.onFinding(finding(off, want, most));
    }
  }

  private static boolean whole(Stroke stroke) {
    return stroke.drive() == Drive.MOTOR
        && stroke.full()
        && (stroke.stoppedBy() == StoppedBy.LIMIT || stroke.stoppedBy() == StoppedBy.TORQUE);
  }

  private static double time(Stroke stroke) {
    return stroke.endS() - stroke.startS();
  }

  private static double u(Assessment assessment, Stroke stroke) {
    double scan =
        assessment.development().recordings().get(stroke.recording()).trace().scanNs() * 1e-9;
    double still =
        stroke.powered().flatMap(Stroke.Powered::standstillS).map(Estimate::u).orElse(scan);
    return Math.hypot(scan, still);
  }

  private static Finding finding(List<Stroke> off, double want, double most) {
    Stroke worst = off.get(0);
    return Draft.of(Code.STROKE_TIME_OFF)
        .stroke(worst)
        .evidence("stroke_time_s", time(worst))
        .evidence("expected_s", want)
        .evidence("tolerance_s", most)
        .evidence("strokes", off.size())
        .evidence("turns_per_s", worst.powered().map(Stroke.Powered::runTurnsPerS))
        .says(
            String.format(
                "The stroke took %s while %s, expected %s \u00b1 %s.",
                Amounts.seconds(time(worst)),
                worst.direction().word(),
                Amounts.seconds(want),
                Amounts.seconds(most)),
            "Check gearing, motor speed and supply, and whether the valve runs heavy.");
  }
}
