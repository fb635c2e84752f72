package tripline.measure;

import java.util.function.DoubleUnaryOperator;

/** Composite five-point Gauss-Legendre rule: exact for polynomials of degree nine on each panel. */
final class Quadrature {
  private static final double[] NODES = {
    -0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640
  };
  private static final double[] WEIGHTS = {
    0.2369268850561891,
    0.4786286704993665,
    0.5688888888888889,
    0.4786286704993665,
    0.2369268850561891
  };

  private final double[] x;
  private final double[] w;

  private Quadrature(double[] x, double[] w) {
    this.x = x;
    this.w = w;
  }

  /** The rule on a range, at least one panel. */
  static Quadrature over(double from, double to, int panels) {
    double[] x = new double[panels * NODES.length];
    double[] w = new double[x.length];
    double half = (to - from) / (2 * panels);
    for (int i = 0; i < x.length; i++) {
      int panel = i / NODES.length;
      x[i] = from + half * (2 * panel + 1 + NODES[i % NODES.length]);
      w[i] = half * WEIGHTS[i % NODES.length];
    }
    return new Quadrature(x, w);
  }

  /** This rule with every weight multiplied by the standard normal density there. */
  Quadrature underGauss() {
    double[] weighted = new double[w.length];
    for (int i = 0; i < w.length; i++) {
      weighted[i] = w[i] * Gauss.density(x[i]);
    }
    return new Quadrature(x, weighted);
  }

  double integral(DoubleUnaryOperator f) {
    return integral(values(f));
  }

  /** Integral of a function known at {@link #values the nodes}. */
  double integral(double[] values) {
    double sum = 0;
    for (int i = 0; i < w.length; i++) {
      sum += w[i] * values[i];
    }
    return sum;
  }

  /** The function at every node. */
  double[] values(DoubleUnaryOperator f) {
    double[] values = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      values[i] = f.applyAsDouble(x[i]);
    }
    return values;
  }
}
