package tripline.measure;

/** Guards against figures that no formula here can take. */
final class Finite {
  private Finite() {}

  static double require(double x, String what) {
    if (!Double.isFinite(x)) {
      throw new IllegalArgumentException(what + " is not a finite number: " + x);
    }
    return x;
  }

  static double requireNotNegative(double x, String what) {
    if (require(x, what) < 0) {
      throw new IllegalArgumentException(what + " is negative: " + x);
    }
    return x;
  }

  /** Strictly between 0 and 1. */
  static double requireProbability(double p, String what) {
    if (!(p > 0 && p < 1)) {
      throw new IllegalArgumentException(what + " is not between 0 and 1: " + p);
    }
    return p;
  }

  static int requireAtLeast(int least, int n, String what) {
    if (n < least) {
      throw new IllegalArgumentException(what + ": " + n + ", needs at least " + least);
    }
    return n;
  }
}
