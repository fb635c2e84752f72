package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.job.Seat;
import tripline.sample.Drive;

/**
 * Hard stops of motor strokes at an end that is seated on torque: the limit contact proved the end
 * first, then the torque contact opened. A motor stroke that ended on its limit says nothing about
 * the stop, nor does one that ran into something in mid-travel.
 */
final class TorqueStops {
  private TorqueStops() {}

  static List<Touch> of(Survey survey, int recording) {
    List<Touch> touches = new ArrayList<>();
    for (Leg leg : survey.legs(recording)) {
      if (survey.drive(leg) == Drive.MOTOR) {
        End end = leg.direction().toward();
        boolean seated =
            survey.sheet().end(end).seat() == Seat.TORQUE
                && StopEvents.of(survey, leg).limitBeforeTorque();
        Optional<Touch> touch =
            leg.rest().map(r -> new Touch(end, HardStop.Source.TORQUE, recording, r));
        if (seated) {
          touch.ifPresent(touches::add);
        }
      }
    }
    return touches;
  }
}
