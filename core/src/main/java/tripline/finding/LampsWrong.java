package tripline.finding;

import java.util.List;
import tripline.assess.Assessment;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.End;
import tripline.sample.Drive;

/** {@code lamps-wrong}: at an end, not its own lamp alone is lit. */
final class LampsWrong implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Lamps lamps = new Lamps(assessment);
    if (!lamps.both()) {
      return;
    }
    for (End end : End.values()) {
      List<Stroke> wrong =
          lamps.strokes().stream()
              .filter(s -> s.direction().toward() == end && arrived(assessment, s, end))
              .filter(s -> wrong(lamps, s, end))
              .toList();
      if (!wrong.isEmpty()) {
        sink.onFinding(finding(lamps, wrong, end));
      }
    }
  }

  /**
   * By motor on its limit or its seat, by hand as far as it goes: where neither the stop nor the
   * limit contact's change tells of the end, the furthest it went is somewhere in travel.
   */
  private static boolean arrived(Assessment assessment, Stroke stroke, End end) {
    if (!stroke.full()) {
      return false;
    }
    if (stroke.drive() == Drive.MOTOR) {
      return stroke.stoppedBy() == StoppedBy.LIMIT || stroke.stoppedBy() == StoppedBy.TORQUE;
    }
    return assessment.development().coordinate().stop(end).isPresent()
        || limitSeen(assessment, end);
  }

  private static boolean limitSeen(Assessment assessment, End end) {
    return assessment.judged().contacts().stream()
        .filter(c -> c.contact().role().limitOf().filter(e -> e == end).isPresent())
        .anyMatch(c -> c.seen().tracks().stream().anyMatch(t -> !t.crossings().isEmpty()));
  }

  private static boolean wrong(Lamps lamps, Stroke stroke, End end) {
    double settledS = lamps.settledS(stroke);
    boolean closed = lamps.closedLit(stroke.recording(), settledS);
    boolean open = lamps.openLit(stroke.recording(), settledS);
    return end == End.CLOSED ? !closed || open : closed || !open;
  }

  private static Finding finding(Lamps lamps, List<Stroke> wrong, End end) {
    Stroke first = wrong.get(0);
    double settledS = lamps.settledS(first);
    boolean closed = lamps.closedLit(first.recording(), settledS);
    boolean open = lamps.openLit(first.recording(), settledS);
    String seen =
        closed && open
            ? "both lamps are"
            : closed ? "only lamp-closed is" : open ? "only lamp-open is" : "no lamp is";
    Draft draft = Draft.of(Code.LAMPS_WRONG).stroke(first);
    lamps.all().forEach(l -> draft.contact(l.contact()));
    return draft
        .evidence("end", end.word())
        .evidence("lit", closed && open ? "both" : closed ? "closed" : open ? "open" : "none")
        .evidence("strokes", wrong.size())
        .says(
            String.format(
                "At the %s end %s lit, %s; lamp-%s alone should be.",
                end.word(), seen, Text.times(wrong.size()), end.word()),
            "Check which contacts feed the lamps, and that their cams trip before the drive stands"
                + " still.");
  }
}
