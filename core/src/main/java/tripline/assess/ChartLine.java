package tripline.assess;

import java.util.List;
import tripline.job.ClosedWhere;
import tripline.job.Contact;

/**
 * A contact's line of the intended development chart.
 *
 * @param contact the contact
 * @param edges the trip points of its cam, rising
 */
record ChartLine(Contact contact, List<TripTarget> edges) {

  static ChartLine of(Contact contact, List<TripTarget> targets) {
    return new ChartLine(
        contact, targets.stream().filter(t -> t.cam().equals(contact.cam())).toList());
  }

  /** Whether the contact is charted closed just above a trip point. */
  boolean closedAbove(Edge edge) {
    return closedAbove(contact.closed(), edge);
  }

  static boolean closedAbove(ClosedWhere closed, Edge edge) {
    return switch (closed) {
      case OPEN_SIDE -> true;
      case CLOSED_SIDE -> false;
      case INSIDE -> edge != Edge.UPPER;
      case OUTSIDE -> edge == Edge.UPPER;
    };
  }

  /** Same cam, closed on the same side: nobody can tell the two apart by what they do. */
  boolean sameAs(ChartLine other) {
    return contact.cam().equals(other.contact.cam()) && contact.closed() == other.contact.closed();
  }

  /**
   * Whether a contact of the other sense on the same cam: the two must never be closed together.
   */
  boolean oppositeOf(ChartLine other) {
    return contact.cam().equals(other.contact.cam()) && contact.closed() != other.contact.closed();
  }

  /** Distance from x to where this line changes with that sense; infinite where it never does. */
  double distance(double x, boolean closedAbove) {
    double least = Double.POSITIVE_INFINITY;
    for (TripTarget edge : edges) {
      if (closedAbove(edge.edge()) == closedAbove && edge.nominalX().isPresent()) {
        least = Math.min(least, Math.abs(x - edge.nominalX().getAsDouble()));
      }
    }
    return least;
  }
}
