package tripline.harness.rehearse.valve;

/** Lost motion between handwheel and drive: the play operator of mechanics. */
final class Play {
  private Play() {}

  /**
   * Where the drive is after the handwheel moved.
   *
   * @param before x before
   * @param handwheel where the handwheel is now; it pushes while closing at x, while opening at x
   *     plus the lost motion
   */
  static double drive(double before, double handwheel, double lostMotion) {
    return Math.min(Math.max(before, handwheel - lostMotion), handwheel);
  }
}
