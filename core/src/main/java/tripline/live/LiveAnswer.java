package tripline.live;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.assess.Assessment;
import tripline.develop.Explained;
import tripline.develop.Explanation;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.TravelPlan;
import tripline.measure.Estimate;
import tripline.result.Result;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.travel.Coordinate;
import tripline.travel.HardStop;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;
import tripline.travel.TravelMap;
import tripline.verdict.Verdict;

/**
 * All that has been reduced so far, explained: the result that a finished recording of it would
 * get, and what it takes to place further readings in it. Immutable.
 */
public final class LiveAnswer {
  /** A span is as expected within this share of it, or within its tolerance. */
  private static final double SPAN_SHARE = 0.1;

  private final TravelMap map;
  private final Assessment assessment;
  private final Result result;
  private final Channels channels;
  private final OptionalDouble openingAtZero;
  private final OptionalDouble closingAtZero;
  private final List<TripPoint> points;
  private final List<Task> tasks;

  private LiveAnswer(TravelMap map, Assessment assessment) {
    this.map = map;
    this.assessment = assessment;
    result = Verdict.of(assessment);
    channels = sheet().channels();
    openingAtZero = map.x(recording(), map.shift(recording()), Direction.OPENING);
    closingAtZero = map.x(recording(), map.shift(recording()), Direction.CLOSING);
    points = TripPoints.of(this);
    tasks = Tasks.of(this);
  }

  /**
   * Explains recordings; the same as {@link tripline.StrokeAnalysis#of}, with more to be asked.
   *
   * @param sheet what was intended
   * @param recordings in order of time, at least one; the last one goes on
   * @param reference hard stops from an earlier result
   * @throws IllegalArgumentException if there is no recording
   */
  public static LiveAnswer of(
      JobSheet sheet, List<RecordingTrace> recordings, Optional<Reference> reference) {
    Explained explained = Explanation.explained(recordings, sheet, reference);
    return new LiveAnswer(explained.map(), Assessment.of(explained.development()));
  }

  /** What {@link tripline.StrokeAnalysis#of} answers. */
  public Result result() {
    return result;
  }

  /** The sheet. */
  public JobSheet sheet() {
    return assessment.sheet();
  }

  /** State of a contact as last read; empty where it was not. */
  Optional<ContactState> state(Contact contact, Now now) {
    return now.state(channels.indexOf(contact.channel()));
  }

  /** The limits of both ends, then the other trip points in sheet order. */
  List<TripPoint> points() {
    return points;
  }

  /** What there is to do about each of them, states of contacts left out. */
  List<Task> tasks() {
    return tasks;
  }

  Assessment assessment() {
    return assessment;
  }

  /** Index of the recording that goes on. */
  int recording() {
    return assessment.development().recordings().size() - 1;
  }

  /** x of a hard stop, turns; empty where it is not known. */
  public Optional<Estimate> stop(End end) {
    return map.stop(end);
  }

  /**
   * As {@link #stop}, but not where it was only inferred from a plateau and makes a span that the
   * sheet does not expect: half a session tells less than a whole one.
   */
  Optional<Estimate> confirmedStop(End end) {
    return isInferred(end) && !isExpected(assessment.development().coordinate())
        ? Optional.empty()
        : stop(end);
  }

  /** Whether a hard stop is known from nothing but the handwheel having stalled there. */
  boolean isInferred(End end) {
    return assessment
        .development()
        .coordinate()
        .stop(end)
        .filter(stop -> stop.source() == HardStop.Source.PLATEAU)
        .isPresent();
  }

  private boolean isExpected(Coordinate coordinate) {
    TravelPlan plan = sheet().travel();
    if (coordinate.span().isEmpty() || plan.spanTurns().isEmpty()) {
      return true;
    }
    double expected = plan.spanTurns().getAsDouble();
    double allowed = Math.max(plan.spanToleranceTurns().orElse(0), SPAN_SHARE * expected);
    return Math.abs(coordinate.span().get().value() - expected) <= allowed;
  }

  /** x of a reading of the recording that goes on, play taken up one way. */
  OptionalDouble x(double reading, Direction direction) {
    OptionalDouble atZero = direction == Direction.OPENING ? openingAtZero : closingAtZero;
    return atZero.isEmpty() || Double.isNaN(reading)
        ? OptionalDouble.empty()
        : OptionalDouble.of(atZero.getAsDouble() + reading * sheet().position().turnsPerUnit());
  }

  /** Standard uncertainty of such an x, turns; 0 where it has no place. */
  double xU(double reading, Direction direction) {
    double unwrapped = reading + map.shift(recording());
    return map.x(recording(), Estimate.exact(unwrapped), direction).map(Estimate::u).orElse(0.0);
  }
}
