package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * A straight scale from figures to units of the drawing.
 *
 * @param from figure at the unit {@code begin}
 * @param to figure at the unit {@code end}, not {@code from}
 */
record Axis(double from, double to, double begin, double end) {
  private static final double[] NICE = {1, 2, 2.5, 5, 10};

  Axis {
    if (!(Math.abs(to - from) > 0) || !Double.isFinite(to - from)) {
      throw new IllegalArgumentException("an axis from " + from + " to " + to);
    }
  }

  /** An axis to the same tick either way, the first at or beyond a figure; see {@link #ticks}. */
  static Axis symmetric(double reach, int mostTicks, double begin, double end) {
    double step = step(2 * reach / mostTicks);
    double round = step * Math.ceil(reach / step - 1e-9);
    return new Axis(-round, round, begin, end);
  }

  double at(double figure) {
    return begin + (figure - from) / (to - from) * (end - begin);
  }

  /** Where a figure lies, or the nearest end where it lies outside. */
  double within(double figure) {
    return at(Math.max(Math.min(from, to), Math.min(Math.max(from, to), figure)));
  }

  boolean holds(double figure) {
    return figure >= Math.min(from, to) && figure <= Math.max(from, to);
  }

  /** Round figures, at most so many. */
  List<Double> ticks(int most) {
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    double step = step((high - low) / most);
    List<Double> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }

  /** The step between {@link #ticks}. */
  double tickStep(int most) {
    return step(Math.abs(to - from) / most);
  }

  private static double step(double least) {
    double decade = Math.pow(10, Math.floor(Math.log10(least)));
    for (double nice : NICE) {
      if (nice * decade >= least * (1 - 1e-9)) {
        return nice * decade;
      }
    }
    return 10 * decade;
  }
}
