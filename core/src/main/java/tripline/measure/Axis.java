package tripline.measure;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Figures of a whole axis from several positions, each approached from both directions with
 * deviations from its target (ISO 230-2).
 *
 * @param reversal B: largest reversal value in size
 * @param meanReversal signed mean of the reversal values
 * @param repeatability R: largest bidirectional repeatability
 * @param systematicUp E in the rising direction: range of its mean deviations
 * @param systematicDown E in the falling direction
 * @param systematic E: range of the mean deviations of both directions together
 * @param meanDeviation M: range of the middles
 * @param accuracyUp A in the rising direction: range of mean plus or minus 2 s
 * @param accuracyDown A in the falling direction
 * @param accuracy A: range of mean plus or minus 2 s of both directions together
 */
public record Axis(
    double reversal,
    double meanReversal,
    double repeatability,
    double systematicUp,
    double systematicDown,
    double systematic,
    double meanDeviation,
    double accuracyUp,
    double accuracyDown,
    double accuracy) {

  /**
   * The figures of some positions.
   *
   * @throws IllegalArgumentException if there are none
   */
  public static Axis of(List<TwoDirections> positions) {
    Finite.requireAtLeast(1, positions.size(), "positions");
    double upHigh = highest(positions, p -> p.up().mean());
    double upLow = -highest(positions, p -> -p.up().mean());
    double downHigh = highest(positions, p -> p.down().mean());
    double downLow = -highest(positions, p -> -p.down().mean());
    double upTop = highest(positions, p -> p.up().mean() + 2 * p.up().sd());
    double upFoot = -highest(positions, p -> 2 * p.up().sd() - p.up().mean());
    double downTop = highest(positions, p -> p.down().mean() + 2 * p.down().sd());
    double downFoot = -highest(positions, p -> 2 * p.down().sd() - p.down().mean());
    double middles =
        highest(positions, TwoDirections::middle) + highest(positions, p -> -p.middle());
    return new Axis(
        highest(positions, p -> Math.abs(p.reversal())),
        positions.stream().mapToDouble(TwoDirections::reversal).average().orElseThrow(),
        highest(positions, TwoDirections::repeatability),
        upHigh - upLow,
        downHigh - downLow,
        Math.max(upHigh, downHigh) - Math.min(upLow, downLow),
        middles,
        upTop - upFoot,
        downTop - downFoot,
        Math.max(upTop, downTop) - Math.min(upFoot, downFoot));
  }

  private static double highest(
      List<TwoDirections> positions, ToDoubleFunction<TwoDirections> figure) {
    return positions.stream().mapToDouble(figure).max().orElseThrow();
  }
}
