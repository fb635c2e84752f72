package tripline.measure;

/** Compensated summation (Neumaier's form of Kahan's): error independent of the count. */
final class Sum {
  private double sum;
  private double lost;

  static double of(double[] values) {
    Sum sum = new Sum();
    for (double value : values) {
      sum.add(value);
    }
    return sum.value();
  }

  void add(double x) {
    double next = sum + x;
    lost += Math.abs(sum) >= Math.abs(x) ? (sum - next) + x : (x - next) + sum;
    sum = next;
  }

  double value() {
    return sum + lost;
  }
}
