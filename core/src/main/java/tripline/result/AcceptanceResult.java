package tripline.result;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;
import tripline.result.Result.PartResult;

/**
 * What the full strokes of the judged setting say together. Travel in turns.
 *
 * @param decision over the strokes alone; the result's decision takes the single judgements in
 * @param strokesAsked strokes each way that the sheet asks for
 * @param confidence of the tolerance intervals
 * @param share of future trips they are to hold
 * @param askedFactor factor k of the interval with the strokes asked for
 * @param opening full strokes opening
 * @param closing full strokes closing
 * @param moreOpening strokes opening that would settle what is open, should they scatter as these
 *     do; null where something must be settled first that no number of strokes settles
 * @param moreClosing the same, closing
 * @param trips one a trip point, on the approach it is judged on
 * @param series one a contact, trip point and direction
 * @param standOuts outliers and movements to look at
 * @param repeatability pooled over the trip points
 */
public record AcceptanceResult(
    Decision decision,
    int strokesAsked,
    double confidence,
    double share,
    double askedFactor,
    int opening,
    int closing,
    @Nullable Integer moreOpening,
    @Nullable Integer moreClosing,
    List<AcceptedTrip> trips,
    List<SeriesResult> series,
    List<StandOutResult> standOuts,
    RepeatabilityResult repeatability) {

  /**
   * A trip point over its strokes. {@code mean}, {@code target}, {@code lower}, {@code upper} (the
   * limits), {@code from} and {@code to} (the interval) are x. The interval is the mean with {@code
   * scatterHalf} = {@code factor} times {@code sd} and {@code commonHalf} on either side. {@code
   * reason} is null where it is accepted.
   */
  public record AcceptedTrip(
      String cam,
      @Nullable String edge,
      @Nullable String contact,
      String direction,
      boolean required,
      int strokes,
      int aside,
      @Nullable Double mean,
      @Nullable Double sd,
      @Nullable Double target,
      @Nullable Double tolerance,
      @Nullable Double lower,
      @Nullable Double upper,
      @Nullable Double factor,
      @Nullable Double scatterHalf,
      @Nullable Double commonHalf,
      List<PartResult> commonParts,
      @Nullable Double from,
      @Nullable Double to,
      Decision decision,
      @Nullable String reason,
      @Nullable Integer strokesNeeded,
      @Nullable Double supportedShare,
      @Nullable BothResult both) {}

  /**
   * Both directions of a trip point (ISO 230-2): reversal value, opening less closing, with its
   * uncertainty from scatter, and bidirectional repeatability.
   */
  public record BothResult(double reversal, double reversalU, double repeatability) {}

  /**
   * Changes of one contact at one trip point in one direction. {@code sd} is the repeatability
   * standard deviation, {@code limit} the repeatability limit; both need two strokes. {@code
   * measurementSd} is what the measurement alone makes it scatter.
   */
  public record SeriesResult(
      String contact,
      String cam,
      @Nullable String edge,
      String direction,
      int strokes,
      @Nullable Double mean,
      @Nullable Double sd,
      @Nullable Double range,
      @Nullable Double limit,
      @Nullable Double measurementSd,
      List<PointResult> points,
      @Nullable OutlierResult outlier,
      @Nullable DriftResult drift,
      @Nullable StepResult step) {}

  /**
   * What stands out of a series: {@code kind} is {@code outlier}, {@code drift} or {@code step};
   * {@code turns} how far the outlier lies from the others, or how far the trips moved in all.
   */
  public record StandOutResult(
      String kind,
      String contact,
      String cam,
      @Nullable String edge,
      String direction,
      double turns,
      double chance) {}

  /** One change; {@code counted} is false for a partial approach. */
  public record PointResult(int recording, int stroke, double position, boolean counted) {}

  /**
   * The trip farthest from the mean (Grubbs, two-sided): {@code g} with its critical values at 5
   * and 1 %; {@code grade} is {@code none}, {@code straggler} or {@code outlier}.
   */
  public record OutlierResult(
      int recording,
      int stroke,
      double position,
      double g,
      double criticalFive,
      double criticalOne,
      String grade) {}

  /** Straight drift over stroke number, and the chance of as much by scatter alone. */
  public record DriftResult(double perStroke, double u, double dof, double probability) {}

  /** The most significant step: after so many strokes, by how much. */
  public record StepResult(int after, double size, double u, double dof, double probability) {}

  /**
   * Repeatability standard deviation pooled over the trip points, its limit and what it stands on;
   * {@code worst} names the series that scatters most, with Cochran's statistic and its critical
   * value at 1 %.
   */
  public record RepeatabilityResult(
      @Nullable Double sd,
      double dof,
      @Nullable Double limit,
      double limitFactor,
      String basis,
      @Nullable WorstResult worst) {}

  /** The series that scatters most, against its fellows. */
  public record WorstResult(
      String contact, String direction, double sd, double statistic, double critical, int series) {}
}
