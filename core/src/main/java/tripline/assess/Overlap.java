package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.develop.Stroke;
import tripline.job.Direction;
import tripline.reduce.Change;
import tripline.sample.ContactState;

/**
 * Two opposite contacts of one cam closed together (IEC 60947-5-1: a change-over breaks before it
 * makes).
 *
 * @param broke the contact that should have opened first
 * @param made the contact that had closed already
 * @param stroke in which stroke
 * @param crossing the late break
 * @param leastS for at least how long both were closed, s
 * @param leastTurns over at least how much travel
 */
public record Overlap(
    ContactSeen broke,
    ContactSeen made,
    Stroke stroke,
    Crossing crossing,
    double leastS,
    double leastTurns) {

  /**
   * Overlaps between two opposite contacts that are beyond doubt: the make had been seen at a time
   * at which the break was still seen closed, for longer than either of them took to settle (the
   * first edges of a burst may fall between samples), and in most of the passages that way: a
   * contact that chatters meets its opposite now and then. Brackets that touch or meet prove
   * nothing.
   */
  static List<Overlap> between(ContactSeen a, ContactSeen b, Flutter flutter) {
    List<Overlap> all = new ArrayList<>();
    for (Track track : a.tracks()) {
      for (Direction direction : Direction.values()) {
        List<Overlap> seen = new ArrayList<>();
        int passages = 0;
        for (Crossing one : track.toward(direction)) {
          Optional<Crossing> other = inStroke(b, track.edge(), one.stroke());
          if (other.isPresent()) {
            passages++;
            of(a, one, b, other.orElseThrow(), flutter).ifPresent(seen::add);
          }
        }
        if (2 * seen.size() > passages) {
          all.addAll(seen);
        }
      }
    }
    return all;
  }

  private static Optional<Crossing> inStroke(ContactSeen contact, Edge edge, Stroke stroke) {
    return contact.track(edge).stream()
        .flatMap(t -> t.crossings().stream())
        .filter(c -> c.stroke().equals(stroke))
        .findFirst();
  }

  private static Optional<Overlap> of(
      ContactSeen a, Crossing one, ContactSeen b, Crossing other, Flutter flutter) {
    boolean oneBreaks = one.trip().to() == ContactState.OPEN;
    if (oneBreaks == (other.trip().to() == ContactState.OPEN)) {
      return Optional.empty();
    }
    Crossing broke = oneBreaks ? one : other;
    Crossing made = oneBreaks ? other : one;
    Change late = broke.trip().change();
    Change soon = made.trip().change();
    long certain = late.beforeNs() - soon.afterNs();
    if (certain <= flutter.lengthNs(broke.trip()) + flutter.lengthNs(made.trip())) {
      return Optional.empty();
    }
    double turns = Math.abs(broke.x().value() - made.x().value());
    double whole = Math.max(1, late.timeNs() - soon.timeNs());
    return Optional.of(
        new Overlap(
            oneBreaks ? a : b,
            oneBreaks ? b : a,
            one.stroke(),
            broke,
            certain * 1e-9,
            turns * Math.min(1, certain / whole)));
  }
}
