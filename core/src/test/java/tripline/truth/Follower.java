package tripline.truth;

import tripline.job.ClosedWhere;

/**
 * A contact riding on its cam's one or two trip points, each a hysteresis: passed upward at {@code
 * rise}, downward at {@code fall}. The making contact comes {@code makeDelay} after the breaking
 * one in either direction.
 */
final class Follower {
  final int cam;
  final double[] rise;
  final double[] fall;
  final boolean[] above;
  private final ClosedWhere closed;

  Follower(int cam, CamPlan plan, ContactPlan contact, double xTurns) {
    this.cam = cam;
    closed = contact.closed();
    int edges = plan.closingTrips().size();
    rise = new double[edges];
    fall = new double[edges];
    above = new boolean[edges];
    for (int e = 0; e < edges; e++) {
      boolean makesOpening = makesOpening(e);
      fall[e] = plan.closingTrips().get(e) - (makesOpening ? 0 : contact.makeDelay());
      rise[e] =
          plan.closingTrips().get(e)
              + plan.differential()
              + (makesOpening ? contact.makeDelay() : 0);
      above[e] = xTurns > (rise[e] + fall[e]) / 2;
    }
  }

  private boolean makesOpening(int edge) {
    return switch (closed) {
      case OPEN_SIDE -> true;
      case CLOSED_SIDE -> false;
      case INSIDE -> edge == 0;
      case OUTSIDE -> edge == 1;
    };
  }

  /** Whether a sound contact is closed now. */
  boolean closed() {
    boolean last = above[above.length - 1];
    return switch (closed) {
      case OPEN_SIDE -> above[0];
      case CLOSED_SIDE -> !above[0];
      case INSIDE -> above[0] && !last;
      case OUTSIDE -> !above[0] || last;
    };
  }
}
