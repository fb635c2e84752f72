package tripline.harness.report.drawing;

import java.util.Arrays;

/** Labels kept apart. */
final class Labels {
  private Labels() {}

  /**
   * Places as near to those wanted as may be, at least a gap apart and within bounds; order is
   * kept.
   *
   * @param wanted in rising order
   */
  static double[] apart(double[] wanted, double gap, double low, double high) {
    double[] at = wanted.clone();
    for (int i = 0; i < at.length; i++) {
      at[i] = Math.max(at[i], i == 0 ? low : at[i - 1] + gap);
    }
    for (int i = at.length - 1; i >= 0; i--) {
      at[i] = Math.min(at[i], i == at.length - 1 ? high : at[i + 1] - gap);
    }
    return at;
  }

  /** Indexes of figures in rising order. */
  static Integer[] order(double[] figures) {
    Integer[] order = new Integer[figures.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(figures[a], figures[b]));
    return order;
  }
}
