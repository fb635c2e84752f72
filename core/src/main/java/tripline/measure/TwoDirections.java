package tripline.measure;

/**
 * One position approached from both directions (ISO 230-2).
 *
 * @param up deviations when approached in the rising direction (opening), n at least 2
 * @param down deviations when approached in the falling direction (closing), n at least 2
 */
public record TwoDirections(Moments up, Moments down) {

  /**
   * @throws IllegalArgumentException if a direction has fewer than two values
   */
  public TwoDirections {
    Finite.requireAtLeast(2, up.n(), "values in the rising direction");
    Finite.requireAtLeast(2, down.n(), "values in the falling direction");
  }

  /** Reversal value B: mean up minus mean down, signed. */
  public double reversal() {
    return up.mean() - down.mean();
  }

  /** Middle of both means. */
  public double middle() {
    return 0.5 * (up.mean() + down.mean());
  }

  /** Standard uncertainty of the reversal value from scatter alone; that of the middle is half. */
  public double uReversal() {
    return Math.hypot(up.sdOfMean(), down.sdOfMean());
  }

  /** Effective degrees of freedom of {@link #uReversal}; infinite without scatter. */
  public double degreesOfFreedom() {
    return WelchSatterthwaite.degreesOfFreedom(
        new double[] {up.sdOfMean(), down.sdOfMean()}, new double[] {up.n() - 1, down.n() - 1});
  }

  /** Unidirectional repeatability in the rising direction, 4 s. */
  public double repeatabilityUp() {
    return 4 * up.sd();
  }

  /** Unidirectional repeatability in the falling direction, 4 s. */
  public double repeatabilityDown() {
    return 4 * down.sd();
  }

  /** Bidirectional repeatability R: {@code max(2 s_up + 2 s_down + |B|, 4 s_up, 4 s_down)}. */
  public double repeatability() {
    return Math.max(
        2 * up.sd() + 2 * down.sd() + Math.abs(reversal()),
        Math.max(repeatabilityUp(), repeatabilityDown()));
  }
}
