package tripline.live;

import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.live.TurningPoints.By;
import tripline.live.TurningPoints.Followed;
import tripline.measure.Estimate;

/**
 * Where the drive stands now, and what the handwheel has to turn before it follows.
 *
 * @param x travel coordinate, handwheel turns
 * @param uOpening standard uncertainty of x where the play is taken up toward open, turns
 * @param uClosing the same toward closed
 * @param side the direction in which the play was last taken up; empty where the handwheel has not
 *     been turned far enough to tell
 * @param slackOpeningTurns handwheel turns until the drive follows toward open, &gt;= 0
 * @param slackClosingTurns the same toward closed
 * @param slack whether these are counted
 * @param moving which way the handwheel is being turned; empty where it stands
 * @param sinceTurnTurns how far it has been turned since it last turned back, + toward open
 */
public record Whereabouts(
    double x,
    double uOpening,
    double uClosing,
    Optional<Direction> side,
    double slackOpeningTurns,
    double slackClosingTurns,
    Slack slack,
    Optional<Direction> moving,
    double sinceTurnTurns) {

  /** Less than this is no turning back, turns. */
  private static final double LEAST_WAY_TURNS = 0.05;

  /** Whether lost motion can be counted. */
  public enum Slack {
    COUNTED,
    /** The sensor rides on the drive: it does not see the handwheel turn back. */
    UNSEEN
  }

  /** How far something lies ahead. */
  public record Ahead(double travelTurns, double handwheelTurns, Direction toward) {
    /** The same in degrees of the handwheel. */
    public double handwheelDegrees() {
      return 360 * handwheelTurns;
    }
  }

  /** Empty where no position was read, or the recording could not be placed among the others. */
  public static Optional<Whereabouts> of(LiveAnswer answer, Now now) {
    double reading = now.reading();
    OptionalDouble opening = answer.x(reading, Direction.OPENING);
    OptionalDouble closing = answer.x(reading, Direction.CLOSING);
    if (opening.isEmpty() || closing.isEmpty()) {
      return Optional.empty();
    }
    Followed drive =
        now.turns().follow(r -> bound(answer, r, End.CLOSED), r -> bound(answer, r, End.OPEN));
    double perUnit = answer.sheet().position().turnsPerUnit();
    double x = drive.value();
    Optional<Direction> side = side(drive.by(), drive.half());
    double least = Math.min(opening.getAsDouble(), closing.getAsDouble());
    double most = Math.max(opening.getAsDouble(), closing.getAsDouble());
    return Optional.of(
        new Whereabouts(
            x,
            answer.xU(reading, Direction.OPENING),
            answer.xU(reading, Direction.CLOSING),
            side,
            Math.max(0, x - least),
            Math.max(0, most - x),
            answer.sheet().position().side() == SensorSide.DRIVE ? Slack.UNSEEN : Slack.COUNTED,
            now.motion().direction(perUnit),
            now.turns().sinceTurn(LEAST_WAY_TURNS / Math.abs(perUnit)) * perUnit));
  }

  /** Of the two x that a reading can stand for, the one nearer to an end. */
  private static double bound(LiveAnswer answer, double reading, End nearer) {
    double opening = answer.x(reading, Direction.OPENING).orElse(0);
    double closing = answer.x(reading, Direction.CLOSING).orElse(0);
    return nearer == End.CLOSED ? Math.min(opening, closing) : Math.max(opening, closing);
  }

  private static Optional<Direction> side(By by, double half) {
    if (half > 0) {
      return Optional.empty();
    }
    return switch (by) {
      case LOWER -> Optional.of(Direction.OPENING);
      case UPPER -> Optional.of(Direction.CLOSING);
      case NOTHING -> Optional.empty();
    };
  }

  /** Standard uncertainty of x where the play is taken up one way, turns. */
  public double u(Direction direction) {
    return direction == Direction.OPENING ? uOpening : uClosing;
  }

  /** Standard uncertainty of x as it stands, turns. */
  public double u() {
    return side.map(this::u).orElse(Math.max(uOpening, uClosing));
  }

  /** Distance to a place. */
  public Ahead to(double targetX) {
    double travel = targetX - x;
    return travel >= 0
        ? new Ahead(travel, travel + slackOpeningTurns, Direction.OPENING)
        : new Ahead(-travel, -travel + slackClosingTurns, Direction.CLOSING);
  }

  /** Distance inward from a hard stop, turns. */
  public double from(Estimate stop, End end) {
    return end == End.CLOSED ? x - stop.value() : stop.value() - x;
  }

  /** Handwheel turns until the drive follows one way. */
  public double slack(Direction direction) {
    return direction == Direction.OPENING ? slackOpeningTurns : slackClosingTurns;
  }
}
