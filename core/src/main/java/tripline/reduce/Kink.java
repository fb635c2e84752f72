package tripline.reduce;

/**
 * Where a drive starts or is stopped within a fit window, the path has a kink that no smooth
 * candidate follows: one side then tells where the other began. Seen by a parabola through the
 * window, whose slopes at its ends differ by more than any ripple makes them.
 */
final class Kink {
  private static final int PARABOLA = 3;

  /** Slope at the slow end over that at the fast one; a cranked handwheel ripples less. */
  private static final double SLOWED_AT_END = 0.2;

  /** Ways gone on either side: one side of a stop within half a second. */
  private static final double SLOWED = 0.5;

  private Kink() {}

  /** The side on which the drive moves, both where it moves on both. */
  static FitWindow.Reach movingSide(FitWindow window) {
    double[][] l = new double[PARABOLA][];
    double[] m = new double[PARABOLA];
    for (int i = 0; i < PARABOLA; i++) {
      l[i] = window.g[i].clone();
      m[i] = window.b[i];
    }
    if (window.points <= PARABOLA || Double.isNaN(Cholesky.decompose(l, PARABOLA))) {
      return FitWindow.Reach.BOTH_SIDES;
    }
    Cholesky.forward(l, m, PARABOLA);
    Cholesky.backward(l, m, PARABOLA);
    // P'_1 = 1, P'_2 = -3 and 3 at the ends.
    double before = m[1] - 3 * m[2];
    double after = m[1] + 3 * m[2];
    double sign = Math.signum(before + after);
    return movingSide(before * sign, after * sign, SLOWED_AT_END);
  }

  /** The same of ways gone on either side in the same time, 0 and more. */
  static FitWindow.Reach movingSide(double before, double after) {
    return movingSide(before, after, SLOWED);
  }

  private static FitWindow.Reach movingSide(double before, double after, double slowed) {
    if (after < slowed * before) {
      return FitWindow.Reach.BEFORE;
    }
    return before < slowed * after ? FitWindow.Reach.AFTER : FitWindow.Reach.BOTH_SIDES;
  }
}
