package tripline.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.assess.TripTarget;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.sample.ContactState;

/**
 * A contact as it is, beside what its line of the development chart says here.
 *
 * @param contact the contact
 * @param state as last read; empty where it was not read
 * @param charted as charted here
 */
public record ContactNow(Contact contact, Optional<ContactState> state, Charted charted) {
  /** What the chart says of a place. */
  public enum Charted {
    OPEN,
    CLOSED,
    /** It may change here: within the tolerance of a trip point. */
    CHANGES,
    /** The place, or a trip point, is not known. */
    UNKNOWN
  }

  /** Whether it is as charted; what is not known or may change here is not against the chart. */
  public boolean isAgainstChart() {
    return state
        .map(
            s ->
                (s == ContactState.OPEN && charted == Charted.CLOSED)
                    || (s == ContactState.CLOSED && charted == Charted.OPEN))
        .orElse(false);
  }

  /** All contacts, in sheet order. */
  public static List<ContactNow> all(LiveAnswer answer, Optional<Whereabouts> where, Now now) {
    JobSheet sheet = answer.sheet();
    List<ContactNow> all = new ArrayList<>();
    for (Contact contact : sheet.contacts()) {
      all.add(
          new ContactNow(
              contact,
              answer.state(contact, now),
              where.map(w -> charted(answer, contact, w.x())).orElse(Charted.UNKNOWN)));
    }
    return all;
  }

  private static Charted charted(LiveAnswer answer, Contact contact, double x) {
    List<TripTarget> edges =
        answer.assessment().judged().cams().stream()
            .map(cam -> cam.target())
            .filter(target -> target.cam().equals(contact.cam()))
            .toList();
    if (edges.isEmpty() || edges.stream().anyMatch(e -> e.x().isEmpty())) {
      return Charted.UNKNOWN;
    }
    boolean closed = !TripPoint.closedAbove(contact.closed(), edges.get(0).edge());
    for (TripTarget edge : edges) {
      double beyond = x - edge.x().orElseThrow().value();
      if (Math.abs(beyond) <= edge.toleranceTurns().orElse(0)) {
        return Charted.CHANGES;
      }
      if (beyond > 0) {
        closed = TripPoint.closedAbove(contact.closed(), edge.edge());
      }
    }
    return closed ? Charted.CLOSED : Charted.OPEN;
  }
}
