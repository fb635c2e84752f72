package tripline.finding;

import java.util.List;
import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.assess.StateHistory;
import tripline.develop.Stroke;
import tripline.develop.Trip;
import tripline.job.Role;
import tripline.sample.ContactState;

/** The lamp contacts of a sheet, and which of them are lit when. */
final class Lamps {
  private final Assessment assessment;
  private final StateHistory states;
  private final List<ContactJudgement> closed;
  private final List<ContactJudgement> open;

  Lamps(Assessment assessment) {
    this.assessment = assessment;
    this.states = new StateHistory(assessment.development());
    this.closed = withRole(Role.LAMP_CLOSED);
    this.open = withRole(Role.LAMP_OPEN);
  }

  private List<ContactJudgement> withRole(Role role) {
    return assessment.judged().contacts().stream().filter(c -> c.contact().role() == role).toList();
  }

  /** Whether both lamps are there to be judged. */
  boolean both() {
    return !closed.isEmpty() && !open.isEmpty();
  }

  List<ContactJudgement> all() {
    return java.util.stream.Stream.concat(closed.stream(), open.stream()).toList();
  }

  /** Strokes of the judged setting. */
  List<Stroke> strokes() {
    return assessment.development().strokes().stream()
        .filter(s -> s.setting() == assessment.judged().number())
        .toList();
  }

  /**
   * When every change that belongs to a stroke shows: a sparsely sampled contact is seen to have
   * changed up to a row after the drive stands.
   */
  double settledS(Stroke stroke) {
    List<Integer> channels = all().stream().map(l -> l.seen().observed().channel()).toList();
    return assessment.development().trips().stream()
        .filter(t -> t.recording() == stroke.recording() && channels.contains(t.channel()))
        .filter(t -> t.timeS() - t.change().gapNs() * 0.5e-9 <= stroke.endS())
        .mapToDouble(Trip::timeS)
        .reduce(stroke.endS(), Math::max);
  }

  boolean closedLit(int recording, double timeS) {
    return lit(closed, recording, timeS);
  }

  boolean openLit(int recording, double timeS) {
    return lit(open, recording, timeS);
  }

  private boolean lit(List<ContactJudgement> lamps, int recording, double timeS) {
    return lamps.stream()
        .map(l -> states.at(recording, l.seen().observed().channel(), timeS))
        .flatMap(Optional::stream)
        .anyMatch(state -> state == ContactState.CLOSED);
  }

  /** Changes of the lamp contacts within a stroke, in order. */
  List<Trip> changes(Stroke stroke) {
    List<Integer> channels = all().stream().map(l -> l.seen().observed().channel()).toList();
    return assessment.development().trips().stream()
        .filter(t -> t.recording() == stroke.recording() && channels.contains(t.channel()))
        .filter(t -> t.timeS() > stroke.startS() && t.timeS() < stroke.endS())
        .sorted((a, b) -> Double.compare(a.timeS(), b.timeS()))
        .toList();
  }
}
