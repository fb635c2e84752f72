package tripline.truth;

import java.util.Arrays;

/**
 * The true motion: handwheel-side position h as a piecewise cubic through nodes {@value #STEP_S} s
 * apart, and the drive's position x, which follows h through the lost motion as a play operator
 * (trade formula with H0 = 0): {@code x = clamp(x before, h - L, h)}.
 */
public final class Path {
  /** Distance of the nodes, s. */
  public static final double STEP_S = 0.001;

  private final double lostMotionTurns;
  private double[] h = new double[1 << 14];
  private double[] v = new double[1 << 14];
  private double[] x = new double[1 << 14];
  private int nodes;

  /** Begins at rest at time 0 with the drive at {@code x}, play taken up as after closing. */
  Path(double lostMotionTurns, double xTurns) {
    this(lostMotionTurns, xTurns, xTurns);
  }

  /** Begins at rest at time 0; {@code 0 <= handwheel - x <= lost motion}. */
  Path(double lostMotionTurns, double handwheelTurns, double xTurns) {
    this.lostMotionTurns = lostMotionTurns;
    h[0] = handwheelTurns;
    x[0] = xTurns;
    nodes = 1;
  }

  void append(double handwheelTurns, double turnsPerS) {
    if (nodes == h.length) {
      h = Arrays.copyOf(h, 2 * nodes);
      v = Arrays.copyOf(v, 2 * nodes);
      x = Arrays.copyOf(x, 2 * nodes);
    }
    h[nodes] = handwheelTurns;
    v[nodes] = turnsPerS;
    x[nodes] = clamp(x[nodes - 1], handwheelTurns);
    nodes++;
  }

  private double clamp(double before, double handwheelTurns) {
    return Math.min(Math.max(before, handwheelTurns - lostMotionTurns), handwheelTurns);
  }

  public double durationS() {
    return (nodes - 1) * STEP_S;
  }

  double lastHandwheel() {
    return h[nodes - 1];
  }

  double lastSpeed() {
    return v[nodes - 1];
  }

  double lastDrive() {
    return x[nodes - 1];
  }

  /** Handwheel-side position at a time within the path; held at its ends. */
  public double handwheelAt(double timeS) {
    int i = segment(timeS);
    return hermite(i, (timeS - i * STEP_S) / STEP_S);
  }

  /** Drive position x at a time. */
  public double driveAt(double timeS) {
    int i = segment(timeS);
    return clamp(x[i], hermite(i, (timeS - i * STEP_S) / STEP_S));
  }

  /** Speed of the handwheel side, turns/s. */
  public double handwheelSpeedAt(double timeS) {
    int i = segment(timeS);
    double u = Math.min(1, Math.max(0, (timeS - i * STEP_S) / STEP_S));
    double slope = (h[i + 1] - h[i]) / STEP_S;
    return 6 * u * (1 - u) * slope + (1 - u) * (1 - 3 * u) * v[i] + u * (3 * u - 2) * v[i + 1];
  }

  /** Speed of the drive, turns/s: 0 while the handwheel crosses the lost motion. */
  public double driveSpeedAt(double timeS) {
    double d = 0.1 * STEP_S;
    return (driveAt(timeS + d) - driveAt(timeS - d)) / (2 * d);
  }

  /** Time in the last segment at which h passes a position. */
  double crossingInLastSegment(double handwheelTurns) {
    int i = nodes - 2;
    double sign = h[i + 1] >= h[i] ? 1 : -1;
    double low = 0;
    double high = 1;
    for (int k = 0; k < 40; k++) {
      double u = (low + high) / 2;
      if (sign * (hermite(i, u) - handwheelTurns) < 0) {
        low = u;
      } else {
        high = u;
      }
    }
    return (i + high) * STEP_S;
  }

  private int segment(double timeS) {
    return Math.max(0, Math.min(nodes - 2, (int) (timeS / STEP_S)));
  }

  private double hermite(int i, double at) {
    double u = Math.min(1, Math.max(0, at));
    double w = 1 - u;
    return w * w * (1 + 2 * u) * h[i]
        + u * u * (3 - 2 * u) * h[i + 1]
        + STEP_S * u * w * (w * v[i] - u * v[i + 1]);
  }
}
