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
              .filter(s -> s.direction().toward() == end && arrived(s))
              .filter(s -> wrong(lamps, s, end))
              .toList();
      if (!wrong.isEmpty()) {
        sink.onFinding(finding(lamps, wrong, end));
      }
    }
  }

  /** By motor on its limit or its seat, by hand as far as it goes. */
  private static boolean arrived(Stroke stroke) {
    boolean motor = stroke.drive() == Drive.MOTOR;
    return stroke.full()
        && (!motor
            || stroke.stoppedBy() == StoppedBy.LIMIT
            || stroke.stoppedBy() == StoppedBy.TORQUE);
  }

  private static boolean wrong(Lamps lamps, Stroke stroke, End end) {
    boolean closed = lamps.closedLit(stroke.recording(), stroke.endS());
    boolean open = lamps.openLit(stroke.recording(), stroke.endS());
    return end == End.CLOSED ? !closed || open : closed || !open;
  }

  private static Finding finding(Lamps lamps, List<Stroke> wrong, End end) {
    Stroke first = wrong.get(0);
    boolean closed = lamps.closedLit(first.recording(), first.endS());
    boolean open = lamps.openLit(first.recording(), first.endS());
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
