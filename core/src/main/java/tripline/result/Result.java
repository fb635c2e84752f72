package tripline.result;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;

/**
 * The answer to one job.
 *
 * @param decision of the whole
 * @param tag plant tag of the valve
 * @param recordings what was analysed, in order; a recording with a step back in time stands as two
 * @param travel stops, span, lost motion
 * @param settings the settings found, in order; the last is judged
 * @param changes every settled change
 * @param cams one a trip point
 * @param contacts one a contact, in sheet order
 * @param ends both ends
 * @param findings what is wrong or worth knowing, worst first
 * @param asFound earlier settings' cams, contacts and ends, one entry a setting that was not judged
 * @param acceptance what its strokes say together; null where only a check was asked for
 */
public record Result(
    Decision decision,
    String tag,
    List<RecordingResult> recordings,
    TravelResult travel,
    List<SettingResult> settings,
    List<ChangeResult> changes,
    List<CamResult> cams,
    List<ContactResult> contacts,
    EndsResult ends,
    List<FindingResult> findings,
    List<AsFound> asFound,
    @Nullable AcceptanceResult acceptance) {

  /** A result of single strokes, as a check gives it. */
  public Result(
      Decision decision,
      String tag,
      List<RecordingResult> recordings,
      TravelResult travel,
      List<SettingResult> settings,
      List<ChangeResult> changes,
      List<CamResult> cams,
      List<ContactResult> contacts,
      EndsResult ends,
      List<FindingResult> findings,
      List<AsFound> asFound) {
    this(
        decision,
        tag,
        recordings,
        travel,
        settings,
        changes,
        cams,
        contacts,
        ends,
        findings,
        asFound,
        null);
  }

  /** The same with what its strokes say together: the worse of both decisions stands. */
  public Result accepting(AcceptanceResult strokes) {
    return new Result(
        decision.and(strokes.decision()),
        tag,
        recordings,
        travel,
        settings,
        changes,
        cams,
        contacts,
        ends,
        findings,
        asFound,
        strokes);
  }

  /**
   * A figure with its standard uncertainty, half-width of its 95 % interval, and the parts these
   * come from.
   */
  public record Measured(double value, double u, double u95, List<PartResult> parts) {}

  /** One part of a combined uncertainty: {@code fit}, {@code bracket}, {@code stop} ... */
  public record PartResult(String name, double u, String shape) {}

  /** A recording (or the part of one on either side of a step back in time). */
  public record RecordingResult(
      String file,
      String sha256,
      String drive,
      long samples,
      double durationS,
      double sampleRateHz,
      double noise,
      double quantum,
      SamplingResult sampling,
      List<StrokeResult> strokes,
      PathResult path) {}

  /**
   * How densely a recording was sampled, and what is missing from it.
   *
   * @param usualRateHz rows a second over the time in which none is missing; null where there is
   *     none
   * @param positionRateHz position readings a second over the whole recording; null with fewer than
   *     two
   * @param lostStretches stretches with rows or position readings missing
   * @param lostS their length together, s
   * @param lostSamples how many are missing; null where that cannot be told
   */
  public record SamplingResult(
      @Nullable Double usualRateHz,
      @Nullable Double positionRateHz,
      int lostStretches,
      double lostS,
      @Nullable Long lostSamples) {}

  /** Outline of the travel for drawings, in order of time. */
  public record PathResult(List<PathPoint> points) {}

  /** A point of the outline: seconds, x. */
  public record PathPoint(double timeS, double position) {}

  /** A stroke: travel one way between two standstills or reversals. */
  public record StrokeResult(
      int number,
      String direction,
      double from,
      double to,
      double startS,
      double endS,
      boolean full,
      @Nullable String stoppedBy,
      @Nullable Measured coast,
      @Nullable Double strokeTimeS,
      int setting,
      @Nullable MotorResult motor) {}

  /** Phases of a powered stroke. */
  public record MotorResult(
      @Nullable Measured runTurnsPerS,
      @Nullable Measured onsetS,
      @Nullable Measured onsetPosition,
      @Nullable Measured standstillS,
      @Nullable Measured standstillPosition,
      @Nullable Measured margin) {}

  /**
   * Hard stops in reading units, the rest in turns. {@code datumPosition} is x where it counts
   * from: 0, or the sheet's span at an open stop.
   */
  public record TravelResult(
      String datum,
      double datumPosition,
      SensorResult sensor,
      @Nullable StopResult closedStop,
      @Nullable StopResult openStop,
      @Nullable Measured span,
      @Nullable Measured lostMotion,
      @Nullable String lostMotionNote) {}

  /** What turns a reading into turns, as the sheet states it. */
  public record SensorResult(String side, double turnsPerUnit, double scaleU) {}

  /**
   * A hard stop: reading, where it is known from ({@code mark}, {@code plateau}, {@code reference},
   * {@code torque}).
   */
  public record StopResult(double value, double u, String source) {}

  /** A setting: a stretch of strokes between adjustments. {@code recording} is where it begins. */
  public record SettingResult(
      int number, int recording, double fromS, double toS, boolean judged) {}

  /** A settled change. */
  public record ChangeResult(
      int recording,
      @Nullable Integer stroke,
      int setting,
      String contact,
      @Nullable String cam,
      String to,
      @Nullable String direction,
      boolean atRest,
      double timeS,
      @Nullable Double reading,
      @Nullable Double readingU,
      @Nullable Double position,
      @Nullable Double u,
      int bounces,
      double settleS,
      @Nullable Measured estimate) {}

  /**
   * A cam's trip point. A closed window has two entries with the cam's name and {@code edge}
   * "lower" and "upper"; other cams one, {@code edge} null. {@code trip} is x; {@code target} and
   * {@code tolerance} are x and turns.
   */
  public record CamResult(
      String cam,
      @Nullable String edge,
      @Nullable Double trip,
      @Nullable Double u,
      @Nullable Double u95,
      @Nullable Double target,
      @Nullable Double tolerance,
      @Nullable Double targetPercent,
      String from,
      Decision decision,
      @Nullable Double probability,
      @Nullable Measured differential,
      int strokes,
      @Nullable Double spread,
      @Nullable Double opening,
      @Nullable Double closing,
      @Nullable Measured estimate,
      @Nullable Adjust adjust) {}

  /**
   * What to turn: signed move of the trip point, + toward open; the same in degrees; and the
   * procedure.
   */
  public record Adjust(double turns, double degrees, String words, List<String> steps) {}

  /** A contact against the chart. */
  public record ContactResult(
      String contact,
      String role,
      String cam,
      Decision decision,
      boolean asCharted,
      boolean exercised,
      @Nullable Double worstSettleS,
      List<Stretch> closedOpening,
      List<Stretch> closedClosing,
      List<TripResult> trips) {}

  /**
   * Where a contact changed in one direction of travel, x, pooled over the strokes of the setting.
   * {@code edge} as in {@link CamResult}; {@code to} is the state it changed to.
   */
  public record TripResult(
      @Nullable String edge,
      String direction,
      String to,
      Measured position,
      int strokes,
      double spread) {}

  /** A stretch of travel (x) over which a contact was seen closed. */
  public record Stretch(double from, double to) {}

  /** Both ends. */
  public record EndsResult(EndResult closed, EndResult open) {}

  /** One end of travel. */
  public record EndResult(
      Backoff backoff,
      @Nullable String stoppedBy,
      @Nullable Measured coast,
      @Nullable Measured margin,
      @Nullable Decision marginDecision,
      @Nullable Double marginProbability,
      Decision decision) {}

  /** Backoff of an end against its target. */
  public record Backoff(
      @Nullable Double value,
      @Nullable Double u,
      @Nullable Double u95,
      double target,
      double tolerance,
      Decision decision,
      @Nullable Double probability,
      @Nullable Measured estimate) {}

  /** A finding. {@code evidence} maps a figure's name to a number or text. */
  public record FindingResult(
      String code,
      String severity,
      @Nullable String contact,
      @Nullable String cam,
      @Nullable Integer recording,
      @Nullable Integer stroke,
      @Nullable Double timeS,
      String message,
      java.util.Map<String, Object> evidence,
      String action) {}

  /** An earlier setting, as found. */
  public record AsFound(
      int setting, List<CamResult> cams, List<ContactResult> contacts, EndsResult ends) {}
}
