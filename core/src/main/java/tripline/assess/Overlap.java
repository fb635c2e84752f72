package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import tripline.develop.Stroke;
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
   * at which the break was still seen closed. Brackets that touch or meet prove nothing.
   */
  static List<Overlap> between(ContactSeen a, ContactSeen b) {
    List<Overlap> all = new ArrayList<>();
    for (Track track : a.tracks()) {
      for (Crossing one : track.crossings()) {
        b.track(track.edge()).stream()
            .flatMap(t -> t.crossings().stream())
            .filter(other -> other.stroke().equals(one.stroke()))
            .forEach(other -> add(a, one, b, other, all));
      }
    }
    return all;
  }

  private static void add(
      ContactSeen a, Crossing one, ContactSeen b, Crossing other, List<Overlap> all) {
    boolean oneBreaks = one.trip().to() == ContactState.OPEN;
    if (oneBreaks == (other.trip().to() == ContactState.OPEN)) {
      return;
    }
    Crossing broke = oneBreaks ? one : other;
    Crossing made = oneBreaks ? other : one;
    Change late = broke.trip().change();
    Change soon = made.trip().change();
    if (soon.afterNs() > late.beforeNs()) {
      return;
    }
    double turns = Math.abs(broke.x().value() - made.x().value());
    double whole = Math.max(1, late.timeNs() - soon.timeNs());
    double certain = late.beforeNs() - soon.afterNs();
    all.add(
        new Overlap(
            oneBreaks ? a : b,
            oneBreaks ? b : a,
            one.stroke(),
            broke,
            certain * 1e-9,
            turns * Math.min(1, certain / whole)));
  }
}
