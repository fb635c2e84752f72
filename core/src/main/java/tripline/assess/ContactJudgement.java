package tripline.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Contact;
import tripline.job.Role;
import tripline.measure.Decision;
import tripline.measure.Estimate;

/**
 * A contact against its line of the chart.
 *
 * @param seen what it did
 * @param exchangedWith the contact whose channel behaves as this one's line
 * @param exercised whether it was seen to change wherever it is judged
 * @param missed strokes that passed its cam without a change
 * @param overlaps contacts of the other sense on its cam closed together with it
 * @param offCam how far it changes from where its cam's reference contact does, turns, where that
 *     is beyond the cam's tolerance for certain
 * @param away blips and strays away from its trip points
 * @param worstSettleS longest settling time, s; empty if it never changed
 * @param chatterS the longest settling time less what sampling may have added, s
 * @param decision of the contact
 */
public record ContactJudgement(
    ContactSeen seen,
    Optional<Contact> exchangedWith,
    boolean exercised,
    List<Missed> missed,
    List<Overlap> overlaps,
    Optional<Estimate> offCam,
    List<Away> away,
    OptionalDouble worstSettleS,
    double chatterS,
    Decision decision) {

  public ContactJudgement {
    missed = List.copyOf(missed);
    overlaps = List.copyOf(overlaps);
    away = List.copyOf(away);
  }

  /** The contact. */
  public Contact contact() {
    return seen.contact();
  }

  /** Whether anything hangs on it: a spare is fitted only. */
  public boolean isWired() {
    return contact().role() != Role.SPARE;
  }

  /** Whether everything it did is as charted. */
  public boolean asCharted() {
    return decision != Decision.REJECT;
  }

  /** Whether any of it is against the chart. */
  static boolean isWrong(
      ContactSeen seen,
      Optional<Contact> exchangedWith,
      List<Missed> missed,
      List<Overlap> overlaps,
      Optional<Estimate> offCam,
      List<Away> away) {
    return exchangedWith.isPresent()
        || seen.sense() == ContactSeen.Sense.OPPOSED
        || !missed.isEmpty()
        || !overlaps.isEmpty()
        || offCam.isPresent()
        || !away.isEmpty();
  }
}
