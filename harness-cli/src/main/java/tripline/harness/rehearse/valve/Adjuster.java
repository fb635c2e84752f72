package tripline.harness.rehearse.valve;

import tripline.job.End;

/** Somebody at the adjuster of a cam, while the valve stands. */
public final class Adjuster implements Mover {
  /** How fast he moves its trip point. */
  private static final double TURNS_PER_S = 0.15;

  private static final double A_STEP = TURNS_PER_S * Motion.STEP_S;

  /** How long he looks at the contact before he turns the other way. */
  private static final double LOOKS_S = 1.0;

  private enum Task {
    TURN,
    UNTIL_NOT_TRIPPED,
    UNTIL_TRIPPED
  }

  private final int cam;
  private final int point;
  private Task task;
  private double left;
  private double looksS;
  private boolean movedBack;
  private boolean stopping;

  private Adjuster(int cam, int point, Task task, double byTurns) {
    this.cam = cam;
    this.point = point;
    this.task = task;
    left = byTurns;
  }

  /** Moves a cam's trip points so far, + toward open. */
  public static Adjuster turn(int cam, double byTurns) {
    return new Adjuster(cam, 0, Task.TURN, byTurns);
  }

  /**
   * Moves a cam until it trips where the valve stands now (of a window: the nearer trip point). If
   * it has tripped already, back until it has not, then forth again (common practice), so that it
   * is set for the approach to the end it is measured from.
   */
  public static Adjuster untilItTrips(VirtualValve valve, int cam) {
    int nearest = 0;
    for (int p = 1; p < valve.build().cams().get(cam).points().size(); p++) {
      double away = Math.abs(valve.tripTurns(cam, p) - valve.driveTurns());
      nearest = away < Math.abs(valve.tripTurns(cam, nearest) - valve.driveTurns()) ? p : nearest;
    }
    return new Adjuster(cam, nearest, Task.UNTIL_NOT_TRIPPED, 0);
  }

  @Override
  public void stop() {
    stopping = true;
  }

  @Override
  public boolean step(VirtualValve valve) {
    if (looksS > 0 && !stopping) {
      looksS -= Motion.STEP_S;
      valve.rest();
      return true;
    }
    double by = stopping ? 0 : task == Task.TURN ? turn() : seek(valve);
    if (by == 0) {
      return false;
    }
    valve.turnAdjuster(cam, by);
    valve.rest();
    return true;
  }

  private double turn() {
    double by = Math.copySign(Math.min(Math.abs(left), A_STEP), left);
    left -= by;
    return by;
  }

  /** Moved toward open, a point of the closed end comes to trip: the drive then stands below it. */
  private double seek(VirtualValve valve) {
    End from = valve.build().cams().get(cam).points().get(point).from();
    boolean tripped = valve.above(cam, point) == (from == End.OPEN);
    double tripping = from == End.CLOSED ? A_STEP : -A_STEP;
    if (!tripped && movedBack) {
      looksS = LOOKS_S;
      movedBack = false;
      return -tripping;
    }
    if (!tripped) {
      task = Task.UNTIL_TRIPPED;
      return tripping;
    }
    if (task == Task.UNTIL_TRIPPED) {
      return 0;
    }
    movedBack = true;
    return -tripping;
  }
}
