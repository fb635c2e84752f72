package tripline.finding;

import java.util.List;
import java.util.Optional;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.ContactSeen;
import tripline.assess.EndJudgement;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.job.Seat;

/** {@code stopped-on-torque}: at an end that is meant to stop on its limit contact. */
final class StoppedOnTorque implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (End end : End.values()) {
      EndJudgement judged = assessment.judged().end(end);
      List<Stroke> torque =
          judged.powered().stream().filter(s -> s.stoppedBy() == StoppedBy.TORQUE).toList();
      if (judged.setting().seat() == Seat.LIMIT && !torque.isEmpty()) {
        sink.onFinding(finding(judged, torque));
      }
    }
  }

  private static Finding finding(EndJudgement end, List<Stroke> torque) {
    Stroke first = torque.get(0);
    Draft draft = Draft.of(Code.STOPPED_ON_TORQUE).stroke(first);
    Optional<ContactSeen> limit = end.limit();
    limit.ifPresent(l -> draft.contact(l.contact()));
    return draft
        .evidence("end", end.end().word())
        .evidence("strokes", torque.size())
        .evidence("position", first.to())
        .says(
            String.format(
                "The motor was stopped on torque and not on its limit contact%s on the way to %s, at"
                    + " %s of travel, %s.",
                limit.map(l -> " " + l.contact().name()).orElse(""),
                end.end().word(),
                Amounts.turns(first.to()),
                Text.times(torque.size())),
            "Do not run it again before the cause is found: limit contact not in the control"
                + " circuit, obstruction, dry stem, or torque set too low. Isolate and try it by"
                + " hand.");
  }
}
