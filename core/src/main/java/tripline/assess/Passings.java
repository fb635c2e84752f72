package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.job.Direction;
import tripline.sample.ContactState;

/** Finds the strokes in which a contact should have changed and did not. */
final class Passings {
  private final Development development;
  private final List<TripTarget> targets;
  private final List<ContactSeen> contacts;
  private final StateHistory states;

  Passings(Development development, List<TripTarget> targets, List<ContactSeen> contacts) {
    this.development = development;
    this.targets = targets;
    this.contacts = contacts;
    this.states = new StateHistory(development);
  }

  /** Strokes a contact missed, in order. */
  List<Missed> missed(ContactSeen contact) {
    List<Missed> all = new ArrayList<>();
    for (Passage passage : contact.observed().passages()) {
      stayed(contact, passage)
          .ifPresent(
              state -> all.add(new Missed(passage.stroke(), state, by(contact, passage.stroke()))));
    }
    return List.copyOf(all);
  }

  private Missed.By by(ContactSeen contact, Stroke stroke) {
    boolean mates =
        contacts.stream()
            .filter(c -> c.contact().cam().equals(contact.contact().cam()))
            .flatMap(c -> c.observed().passages().stream())
            .anyMatch(p -> p.stroke().equals(stroke) && !p.changes().isEmpty());
    return mates ? Missed.By.CONTACT : Missed.By.CAM;
  }

  private Optional<ContactState> stayed(ContactSeen contact, Passage passage) {
    if (!passage.changes().isEmpty() || passed(contact, passage) == 0) {
      return Optional.empty();
    }
    Stroke stroke = passage.stroke();
    int channel = contact.observed().channel();
    Optional<ContactState> before = states.at(stroke.recording(), channel, stroke.startS());
    Optional<ContactState> after = states.at(stroke.recording(), channel, stroke.endS());
    boolean hidden = passed(contact, passage) > 1 && lossWithin(stroke);
    return hidden || !before.equals(after) ? Optional.empty() : before;
  }

  /** How many trip points of its cam a stroke passed for certain. */
  private long passed(ContactSeen contact, Passage passage) {
    return targets.stream()
        .filter(t -> t.cam().equals(contact.contact().cam()))
        .filter(t -> passes(t, passage))
        .count();
  }

  /**
   * A stroke that begins between a cam's two trip points, the one for each direction, need not
   * change it: it must be clear of both. Where no contact of the cam shows its place, only a full
   * stroke that left the target's tolerance behind is certain to have passed.
   */
  private boolean passes(TripTarget target, Passage passage) {
    Optional<CamPlace> there = CamPlace.of(target, contacts, Direction.OPENING);
    Optional<CamPlace> back = CamPlace.of(target, contacts, Direction.CLOSING);
    boolean clear = clear(there, passage) && clear(back, passage);
    boolean shown = there.filter(p -> p.known() == CamPlace.By.CHANGES).isPresent();
    boolean beyond =
        there.map(p -> passage.passes(p.x(), target.toleranceTurns().orElse(0))).orElse(true);
    return clear || (!shown && passage.stroke().full() && beyond);
  }

  private static boolean clear(Optional<CamPlace> place, Passage passage) {
    return place.filter(p -> passage.passes(p.x(), p.clearanceTurns())).isPresent();
  }

  private boolean lossWithin(Stroke stroke) {
    return development.recordings().get(stroke.recording()).trace().losses().stream()
        .anyMatch(
            loss -> {
              long first = development.recordings().get(stroke.recording()).trace().firstNs();
              double from = (loss.fromNs() - first) * 1e-9;
              double to = (loss.toNs() - first) * 1e-9;
              return to > stroke.startS() && from < stroke.endS();
            });
  }
}
