package tripline.harness.rehearse.valve;

import tripline.job.ClosedWhere;

/**
 * A contact riding on its cam's one or two trip points: passed upward at {@code rise}, downward at
 * {@code fall}. Where it makes it comes a little later than where its mates break.
 */
final class Follower {
  private final ClosedWhere closed;
  private final double[] rise;
  private final double[] fall;
  private final boolean[] above;

  Follower(CamBuild cam, ContactBuild contact, double x) {
    closed = contact.contact().closed();
    int points = cam.points().size();
    rise = new double[points];
    fall = new double[points];
    above = new boolean[points];
    for (int i = 0; i < points; i++) {
      boolean makesOpening = makesOpening(i);
      fall[i] = cam.closingTurns(i) - (makesOpening ? 0 : contact.makeDelayTurns());
      rise[i] =
          cam.closingTurns(i)
              + cam.differentialTurns()
              + (makesOpening ? contact.makeDelayTurns() : 0);
      above[i] = x > (rise[i] + fall[i]) / 2;
    }
  }

  private boolean makesOpening(int point) {
    return switch (closed) {
      case OPEN_SIDE -> true;
      case CLOSED_SIDE -> false;
      case INSIDE -> point == 0;
      case OUTSIDE -> point == 1;
    };
  }

  int points() {
    return above.length;
  }

  /** x at which a point is passed while opening, its cam not moved. */
  double rise(int point) {
    return rise[point];
  }

  /** x at which a point is passed while closing, its cam not moved. */
  double fall(int point) {
    return fall[point];
  }

  boolean above(int point) {
    return above[point];
  }

  void pass(int point) {
    above[point] = !above[point];
  }

  /** Whether it is closed now. */
  boolean closed() {
    boolean low = above[0];
    boolean high = above[above.length - 1];
    return switch (closed) {
      case OPEN_SIDE -> low;
      case CLOSED_SIDE -> !low;
      case INSIDE -> low && !high;
      case OUTSIDE -> !low || high;
    };
  }
}
