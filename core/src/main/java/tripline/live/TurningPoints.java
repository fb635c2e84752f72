package tripline.live;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Where a reading turned back, as far as it still matters to what follows it through play.
 *
 * <p>What a play operator puts out depends only on turning points nested within one another: one
 * that a later excursion went beyond is wiped out (Brokate and Sprekels, Hysteresis and Phase
 * Transitions, 1996, section 2.2; from memory). So a short list stands for the whole past, whatever
 * the amount of play turns out to be.
 */
public final class TurningPoints {
  /** No real crank leaves so many loops within loops; beyond it the smallest ones are forgotten. */
  static final int MOST = 64;

  private final double[] at;
  private int size;

  /** Nothing read yet. */
  public TurningPoints() {
    this(new double[MOST], 0);
  }

  private TurningPoints(double[] at, int size) {
    this.at = at;
    this.size = size;
  }

  /** An independent copy. */
  public TurningPoints copy() {
    return new TurningPoints(Arrays.copyOf(at, MOST), size);
  }

  /** The reading is now here. */
  public void add(double reading) {
    if (size >= 2 && (reading - at[size - 1]) * (at[size - 1] - at[size - 2]) >= 0) {
      at[size - 1] = reading;
    } else if (size == 0 || reading != at[size - 1]) {
      push(reading);
    }
    wipe();
  }

  private void push(double reading) {
    if (size == MOST) {
      size -= 2;
    }
    at[size++] = reading;
  }

  private void wipe() {
    while (size >= 3 && isBeyond(size - 1, size - 3)) {
      int from = size == 3 ? 0 : size - 3;
      int gone = size == 3 ? 1 : 2;
      System.arraycopy(at, from + gone, at, from, size - from - gone);
      size -= gone;
    }
  }

  /** Whether the last excursion reaches as far as the turning point before its begin. */
  private boolean isBeyond(int last, int before) {
    return Math.abs(at[last] - at[last - 1]) >= Math.abs(at[before] - at[last - 1]);
  }

  /** Whether anything was read. */
  public boolean isEmpty() {
    return size == 0;
  }

  /** The reading now; NaN where nothing was read. */
  public double last() {
    return size == 0 ? Double.NaN : at[size - 1];
  }

  /**
   * How far the reading has gone since it last turned back, signed; 0 where it never moved.
   *
   * @param least smaller ways there and back are noise, a shaking hand, or a handwheel that springs
   *     back
   */
  public double sinceTurn(double least) {
    for (int i = size - 1; i > 0; i--) {
      if (Math.abs(at[i] - at[i - 1]) >= least) {
        return at[size - 1] - at[i - 1];
      }
    }
    return 0;
  }

  /** Lowest reading that still matters; NaN where nothing was read. */
  public double lowest() {
    return size == 0 ? Double.NaN : size == 1 ? at[0] : Math.min(at[0], at[1]);
  }

  /** Highest reading that still matters; NaN where nothing was read. */
  public double highest() {
    return size == 0 ? Double.NaN : size == 1 ? at[0] : Math.max(at[0], at[1]);
  }

  /**
   * What follows the reading through play.
   *
   * @param value where it stands; NaN where nothing was read
   * @param half it may stand this far to either side: more than 0 until the reading has gone beyond
   *     the play
   * @param by what moved it last
   */
  public record Followed(double value, double half, By by) {}

  /** What last moved a follower. */
  public enum By {
    /** It was pushed up. */
    LOWER,
    /** It was pushed down. */
    UPPER,
    /** It never moved. */
    NOTHING
  }

  /**
   * The play operator: a follower that stays where it is until it meets one of two bounds. Where it
   * stood at first is not known.
   *
   * @param lower bound from below at a reading
   * @param upper bound from above at a reading, not below {@code lower}
   */
  public Followed follow(DoubleUnaryOperator lower, DoubleUnaryOperator upper) {
    if (size == 0) {
      return new Followed(Double.NaN, 0, By.NOTHING);
    }
    double least = lower.applyAsDouble(at[0]);
    double most = upper.applyAsDouble(at[0]);
    By by = By.NOTHING;
    for (int i = 1; i < size; i++) {
      double low = lower.applyAsDouble(at[i]);
      double high = upper.applyAsDouble(at[i]);
      by = low > least ? By.LOWER : high < most ? By.UPPER : by;
      least = Math.min(Math.max(least, low), high);
      most = Math.min(Math.max(most, low), high);
    }
    return new Followed((least + most) / 2, (most - least) / 2, by);
  }
}
