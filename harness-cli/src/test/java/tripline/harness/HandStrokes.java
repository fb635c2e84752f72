package tripline.harness;

import java.util.Locale;
import java.util.Random;

/**
 * Recordings of one stroke up and one back by hand, for {@code sheets/hand.toml}: span 31 turns,
 * 0.3 turns of lost motion in front of the drive, sensor on the handwheel.
 *
 * @param closedBackoff where the cam "close" trips, turns from the closed stop
 * @param openBackoff where the cam "open" trips, turns from the open stop
 * @param rateHz rows a second
 * @param marks whether the operator pressed the marks of the stops
 */
record HandStrokes(double closedBackoff, double openBackoff, int rateHz, Marks marks) {
  /** What the operator did. */
  enum Marks {
    PRESSED,
    FORGOTTEN
  }

  static final HandStrokes RIGHT = new HandStrokes(0.5, 0.6, 200, Marks.PRESSED);

  private static final double SPAN = 31;
  private static final double LOST_MOTION = 0.3;
  private static final double SPEED = 1.2;
  private static final double OWN_DIFFERENTIAL = 0.05;

  HandStrokes closedBackoff(double turns) {
    return new HandStrokes(turns, openBackoff, rateHz, marks);
  }

  HandStrokes rate(int hz) {
    return new HandStrokes(closedBackoff, openBackoff, hz, marks);
  }

  HandStrokes forgetful() {
    return new HandStrokes(closedBackoff, openBackoff, rateHz, Marks.FORGOTTEN);
  }

  String csv() {
    return "# tripline-recording: 1\n# drive: hand\n# started: 2026-03-02T08:14:05Z\n" + table(0);
  }

  /** Header and rows, beginning at a time in seconds. */
  String table(double startS) {
    Random random = new Random(11);
    StringBuilder csv = new StringBuilder("time,position,k1,k2,k3,mark\n");
    double moveS = (SPAN + LOST_MOTION) / SPEED;
    int rows = (int) ((2 * moveS + 3) * rateHz);
    double x = 0;
    boolean awayFromClosed = false;
    boolean nearOpen = false;
    for (int i = 0; i < rows; i++) {
      double t = i / (double) rateHz;
      double up = Math.min(Math.max(0, t - 1), moveS);
      double down = Math.min(Math.max(0, t - 2 - moveS), moveS);
      double h = (up - down) * SPEED;
      x = Math.min(Math.max(x, h - LOST_MOTION), h);
      awayFromClosed = x > closedBackoff + (awayFromClosed ? 0 : OWN_DIFFERENTIAL);
      nearOpen = x > SPAN - openBackoff - (nearOpen ? OWN_DIFFERENTIAL : 0);
      String mark = "";
      if (marks == Marks.PRESSED && i == rateHz / 2) {
        mark = "closed-stop";
      } else if (marks == Marks.PRESSED && i == (int) ((1.5 + moveS) * rateHz)) {
        mark = "open-stop";
      }
      csv.append(
          String.format(
              Locale.ROOT,
              "%.3f,%.4f,%d,%d,%d,%s%n".replace("%n", "\n"),
              startS + t,
              Math.rint((h + 0.001 * random.nextGaussian()) / 0.0005) * 0.0005,
              awayFromClosed ? 1 : 0,
              nearOpen ? 0 : 1,
              awayFromClosed ? 0 : 1,
              mark));
    }
    return csv.toString();
  }
}
