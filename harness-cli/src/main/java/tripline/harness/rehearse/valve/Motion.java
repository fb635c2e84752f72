package tripline.harness.rehearse.valve;

/**
 * The handwheel's last second: nodes {@value #STEP_NS} ns apart, a cubic between them, and the
 * drive that follows through the lost motion.
 */
final class Motion {
  /** Distance of two nodes, ns. */
  static final long STEP_NS = 1_000_000;

  static final double STEP_S = STEP_NS * 1e-9;

  /** How far back it can be asked, nodes. */
  static final int NODES = 1024;

  private final double lostMotion;
  private final double[] h = new double[NODES];
  private final double[] v = new double[NODES];
  private final double[] x = new double[NODES];
  private long last;

  Motion(double lostMotion, double startTurns) {
    this.lostMotion = lostMotion;
    java.util.Arrays.fill(h, startTurns);
    java.util.Arrays.fill(x, startTurns);
  }

  void append(double handwheel, double turnsPerS) {
    double before = drive();
    last++;
    h[at(last)] = handwheel;
    v[at(last)] = turnsPerS;
    x[at(last)] = Play.drive(before, handwheel, lostMotion);
  }

  long nowNs() {
    return last * STEP_NS;
  }

  double handwheel() {
    return h[at(last)];
  }

  double speed() {
    return v[at(last)];
  }

  double drive() {
    return x[at(last)];
  }

  /** Handwheel position at a time of the last second. */
  double handwheelAt(long timeNs) {
    long node = node(timeNs);
    return between(node, (double) (timeNs - node * STEP_NS) / STEP_NS);
  }

  /** Drive position at a time of the last second. */
  double driveAt(long timeNs) {
    return Play.drive(x[at(node(timeNs))], handwheelAt(timeNs), lostMotion);
  }

  /** Time in the last step at which the handwheel passed a position it has passed there. */
  long passedNs(double handwheel) {
    double sign = Math.signum(h[at(last)] - h[at(last - 1)]);
    double low = 0;
    double high = 1;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (sign * (between(last - 1, middle) - handwheel) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (last - 1) * STEP_NS + Math.round(high * STEP_NS);
  }

  private long node(long timeNs) {
    long oldest = Math.max(0, last - NODES + 1);
    return Math.max(oldest, Math.min(last - 1, Math.floorDiv(timeNs, STEP_NS)));
  }

  private double between(long node, double share) {
    double u = Math.min(1, Math.max(0, share));
    double w = 1 - u;
    int a = at(Math.max(0, node));
    int b = at(Math.max(0, node + 1));
    return h[a] * (1 + 2 * u) * w * w
        + h[b] * u * u * (3 - 2 * u)
        + STEP_S * u * w * (v[a] * w - v[b] * u);
  }

  private static int at(long node) {
    return (int) (node & (NODES - 1));
  }
}
