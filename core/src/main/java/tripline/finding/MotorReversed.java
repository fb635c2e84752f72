package tripline.finding;

import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.StateHistory;
import tripline.develop.Stroke;
import tripline.job.End;
import tripline.sample.ContactState;
import tripline.sample.Drive;

/** {@code motor-reversed}: running toward one end while the other end's contactor is in. */
final class MotorReversed implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    StateHistory states = new StateHistory(assessment.development());
    assessment.development().strokes().stream()
        .filter(s -> s.setting() == assessment.judged().number())
        .filter(s -> s.drive() == Drive.MOTOR && reversed(assessment, states, s))
        .findFirst()
        .ifPresent(s -> sink.onFinding(finding(s)));
  }

  private static boolean reversed(Assessment assessment, StateHistory states, Stroke stroke) {
    End toward = stroke.direction().toward();
    return in(assessment, states, stroke, toward.other())
        && !in(assessment, states, stroke, toward);
  }

  private static boolean in(
      Assessment assessment, StateHistory states, Stroke stroke, End contactor) {
    Optional<String> channel = assessment.sheet().motor(contactor);
    double middle = (stroke.startS() + stroke.endS()) / 2;
    return channel
        .flatMap(
            name ->
                states.at(stroke.recording(), assessment.sheet().channels().indexOf(name), middle))
        .filter(state -> state == ContactState.CLOSED)
        .isPresent();
  }

  private static Finding finding(Stroke stroke) {
    return Draft.of(Code.MOTOR_REVERSED)
        .stroke(stroke)
        .evidence("travels", stroke.direction().word())
        .evidence("contactor", stroke.direction().toward().other().approach().word())
        .says(
            String.format(
                "The valve runs %s while the %s contactor is in, %s.",
                stroke.direction().word(),
                stroke.direction().toward().other().approach().word(),
                Text.when(stroke)),
            "Stop: phases are reversed, or the motor channels are exchanged. Limit and torque"
                + " contacts do not protect a motor that runs the wrong way.");
  }
}
