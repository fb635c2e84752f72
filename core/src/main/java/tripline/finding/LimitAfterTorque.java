package tripline.finding;

import java.util.List;
import tripline.assess.Assessment;
import tripline.assess.ContactSeen;
import tripline.assess.EndJudgement;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.job.Seat;

/**
 * {@code limit-after-torque}: at an end that is seated on torque the limit contact had not changed
 * by then, so nothing proves that it was the seat that stopped the motor.
 */
final class LimitAfterTorque implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (End end : End.values()) {
      EndJudgement judged = assessment.judged().end(end);
      if (judged.setting().seat() == Seat.TORQUE) {
        judged.limit().ifPresent(limit -> look(judged, limit, sink));
      }
    }
  }

  private static void look(EndJudgement end, ContactSeen limit, FindingSink sink) {
    List<Stroke> unproved =
        end.powered().stream()
            .filter(s -> s.stoppedBy() == StoppedBy.TORQUE)
            .filter(s -> !changedIn(limit, s))
            .toList();
    if (!unproved.isEmpty()) {
      sink.onFinding(
          Draft.of(Code.LIMIT_AFTER_TORQUE)
              .contact(limit.contact())
              .stroke(unproved.get(0))
              .evidence("end", end.end().word())
              .evidence("strokes", unproved.size())
              .evidence("position", unproved.get(0).to())
              .says(
                  String.format(
                      "The motor stopped on torque toward %s before limit contact %s had changed,"
                          + " %s: nothing proves that it reached its seat.",
                      end.end().word(), limit.contact().name(), Text.times(unproved.size())),
                  "Look for an obstruction, then set the limit cam so that it changes before the"
                      + " seat is reached."));
    }
  }

  private static boolean changedIn(ContactSeen limit, Stroke stroke) {
    return limit.tracks().stream()
        .flatMap(t -> t.crossings().stream())
        .anyMatch(c -> c.stroke().equals(stroke));
  }
}
