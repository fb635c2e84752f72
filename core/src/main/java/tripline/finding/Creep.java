package tripline.finding;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import tripline.measure.Student;

/**
 * How far a trip point moved over the strokes, by least squares within each direction of travel
 * (the two directions share the movement and differ by a constant), judged by its own scatter about
 * that.
 *
 * @param shape trend or step
 * @param moved from the first stroke to the last, turns, + toward open
 * @param chance of as much by scatter alone, 0 to 1
 * @param residualSd scatter about it, turns
 */
record Creep(Shape shape, double moved, double chance, double residualSd) {
  /** How it moved. */
  enum Shape {
    TREND("stroke by stroke"),
    STEP("in one step");

    private final String words;

    Shape(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /**
   * The better of a trend and of a step at the most favourable stroke.
   *
   * @param order of each figure among all strokes, from 0
   * @param side which direction each belongs to, 0 or 1
   * @param x trip points, turns
   * @param leastSd what the measurement alone must scatter, turns
   * @param strokes how many strokes there were
   */
  static Creep of(int[] order, int[] side, double[] x, double leastSd, int strokes) {
    Creep best = fit(Shape.TREND, order, side, x, leastSd, 1, i -> (double) i / (strokes - 1));
    for (int after = 1; after < strokes; after++) {
      int first = after;
      Creep step = fit(Shape.STEP, order, side, x, leastSd, strokes - 1, i -> i >= first ? 1 : 0);
      best = step.chance < best.chance ? step : best;
    }
    return best;
  }

  private static Creep fit(
      Shape shape,
      int[] order,
      int[] side,
      double[] x,
      double leastSd,
      int places,
      IntToDoubleFunction regressor) {
    double[] z = Arrays.stream(order).mapToDouble(regressor).toArray();
    double[] zc = centred(z, side);
    double[] xc = centred(x, side);
    double szz = 0;
    double szx = 0;
    for (int i = 0; i < z.length; i++) {
      szz += zc[i] * zc[i];
      szx += zc[i] * xc[i];
    }
    long sides = Arrays.stream(side).distinct().count();
    double dof = x.length - sides - 1;
    if (szz <= 0 || dof < 1) {
      return new Creep(shape, 0, 1, 0);
    }
    double moved = szx / szz;
    double squares = 0;
    for (int i = 0; i < z.length; i++) {
      double residual = xc[i] - moved * zc[i];
      squares += residual * residual;
    }
    double sd = Math.max(Math.sqrt(squares / dof), leastSd);
    double t = sd > 0 ? moved / (sd / Math.sqrt(szz)) : Double.MAX_VALUE;
    double chance = moved == 0 ? 1 : Student.twoSidedProbability(t, dof);
    return new Creep(shape, moved, Math.min(1, places * chance), sd);
  }

  private static double[] centred(double[] values, int[] side) {
    double[] centred = values.clone();
    for (int s : List.of(0, 1)) {
      double sum = 0;
      int n = 0;
      for (int i = 0; i < values.length; i++) {
        sum += side[i] == s ? values[i] : 0;
        n += side[i] == s ? 1 : 0;
      }
      for (int i = 0; i < values.length; i++) {
        centred[i] -= side[i] == s ? sum / n : 0;
      }
    }
    return centred;
  }
}
