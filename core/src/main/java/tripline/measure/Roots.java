package tripline.measure;

import java.util.function.DoubleUnaryOperator;

/** One bracketed root, by Ridders' method: never leaves the bracket, converges quadratically. */
final class Roots {
  private static final int MOST_STEPS = 200;

  private Roots() {}

  /**
   * Where f changes sign between lo and hi, to a relative 1e-13 of the larger end.
   *
   * @throws IllegalArgumentException if f has the same sign at both ends
   */
  static double between(double lo, double hi, DoubleUnaryOperator f) {
    double a = lo;
    double b = hi;
    double fa = f.applyAsDouble(a);
    double fb = f.applyAsDouble(b);
    if (fa == 0) {
      return a;
    }
    if (fb == 0) {
      return b;
    }
    if (!(fa * fb < 0)) {
      throw new IllegalArgumentException("no root between " + lo + " and " + hi);
    }
    double tolerance = 1e-13 * Math.max(Math.abs(lo), Math.abs(hi));
    double best = Double.NaN;
    for (int step = 0; step < MOST_STEPS && Math.abs(b - a) > tolerance; step++) {
      double middle = 0.5 * (a + b);
      double fm = f.applyAsDouble(middle);
      double root = Math.sqrt(fm * fm - fa * fb);
      if (fm == 0 || root == 0) {
        return middle;
      }
      double x = middle + (middle - a) * Math.copySign(fm / root, (fa - fb) * fm);
      double fx = f.applyAsDouble(x);
      if (fx == 0 || Math.abs(x - best) <= tolerance) {
        return x;
      }
      best = x;
      if (fm * fx < 0) {
        a = middle;
        fa = fm;
        b = x;
        fb = fx;
      } else if (fa * fx < 0) {
        b = x;
        fb = fx;
      } else {
        a = x;
        fa = fx;
      }
    }
    return 0.5 * (a + b);
  }
}
