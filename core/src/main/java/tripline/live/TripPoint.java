package tripline.live;

import java.util.OptionalDouble;
import tripline.assess.Edge;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.sample.ContactState;

/**
 * A trip point that can be set.
 *
 * @param edge which of its cam's
 * @param from the end it is measured from and approached on
 * @param kind whether it is the limit of that end
 * @param contact the contact it is set by
 * @param targetX where it is meant to be, x in turns; empty while the stop is not known
 * @param distanceTurns the same from the stop, turns
 * @param toleranceTurns turns
 */
record TripPoint(
    Edge edge,
    End from,
    Task.Kind kind,
    Contact contact,
    OptionalDouble targetX,
    double distanceTurns,
    double toleranceTurns) {

  String cam() {
    return contact.cam();
  }

  /** State of its contact on the side of the end it is measured from. */
  ContactState beyond() {
    boolean closedThere = closedAbove(contact.closed(), edge) == (from == End.OPEN);
    return closedThere ? ContactState.CLOSED : ContactState.OPEN;
  }

  /** Whether a contact is charted closed just above a trip point. */
  static boolean closedAbove(ClosedWhere closed, Edge edge) {
    return switch (closed) {
      case OPEN_SIDE -> true;
      case CLOSED_SIDE -> false;
      case INSIDE -> edge != Edge.UPPER;
      case OUTSIDE -> edge == Edge.UPPER;
    };
  }

  /** How far a place lies on the far side of the target, turns; negative on the side of the end. */
  OptionalDouble beyondTarget(double x) {
    return targetX.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of((targetX.getAsDouble() - x) * from.approach().sign());
  }
}
