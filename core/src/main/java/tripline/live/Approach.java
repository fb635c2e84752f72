package tripline.live;

import java.util.Optional;
import tripline.job.Direction;
import tripline.live.Step.Phase;
import tripline.live.Task.Kind;
import tripline.live.Task.Progress;
import tripline.live.Whereabouts.Ahead;
import tripline.live.Whereabouts.Slack;
import tripline.measure.Decision;

/**
 * Setting and proving one trip point: which step the drive's place and what was seen so far ask
 * for.
 *
 * @param task the trip point; its target is known
 * @param where where the drive stands
 * @param motion whether the handwheel is turned
 * @param fromStopTurns how far the drive is off the stop of its end; empty where it is not known
 */
record Approach(Task task, Whereabouts where, Now.Motion motion, Optional<Double> fromStopTurns) {
  /** Share of the tolerance that standing at the target may be off by. */
  private static final double AIM_SHARE = 0.2;

  /** The same where going back would cost the lost motion twice. */
  private static final double NEAR_ENOUGH_SHARE = 0.4;

  /** A share of the tolerance that nobody can stand nearer than by hand, turns. */
  private static final double LEAST_AIM_TURNS = 0.01;

  /** On the stop is no further off it than this, turns. */
  private static final double ON_STOP_TURNS = 0.03;

  /** Less lost motion than this is not worth a step of its own, turns. */
  private static final double LEAST_SLACK_TURNS = 0.02;

  /** How far to go past a point before coming back to it, turns. */
  private static final double RUN_UP_TURNS = 1.0;

  /** How far off the point the drive still stands where its adjuster was turned, turns. */
  private static final double STILL_THERE_TURNS = 0.15;

  /** The place must be known to this share of the tolerance for the adjuster to be turned there. */
  private static final double KNOWN_SHARE = 1.0 / 3;

  Step step() {
    return switch (task.progress()) {
      case TRIPPED -> isStillThere() ? turned() : prove();
      case ADJUSTED, PASSED -> prove();
      case FOUND, LEFT -> task.decision() == Decision.UNDECIDED ? prove() : set();
      case UNSEEN -> set();
    };
  }

  /** Turned back past the point it is turned forth again: set on the way it is judged on. */
  private Step turned() {
    return task.hasTripped().orElse(true)
        ? Step.of(Phase.TRIPPED, task, away())
        : Step.of(Phase.TURN_ADJUSTER, task, where.to(task.targetX().orElseThrow()));
  }

  private double beyond() {
    return task.beyondTarget(where.x()).orElseThrow();
  }

  private Direction approach() {
    return task.from().approach();
  }

  private boolean isStillThere() {
    return Math.abs(beyond()) <= STILL_THERE_TURNS && task.furthestTurns() <= STILL_THERE_TURNS;
  }

  private Step prove() {
    boolean judgedBefore = task.progress().isJudged();
    double from = judgedBefore ? cameFrom() : Math.max(task.furthestTurns(), cameFrom());
    boolean been = from >= RUN_UP_TURNS - aim();
    boolean past = beyond() < -task.toleranceTurns();
    if (been && past && !judgedBefore && task.hasTripped().equals(Optional.of(false))) {
      return set();
    }
    return been && !(past && judgedBefore)
        ? Step.of(Phase.PROVE_BACK, task, where.to(task.targetX().orElseThrow()))
        : Step.of(Phase.PROVE_AWAY, task, away());
  }

  /** How far on the far side of the target the handwheel last turned back toward the end. */
  private double cameFrom() {
    return beyond() + Math.max(0, where.sinceTurnTurns() * approach().sign());
  }

  /** To the begin of the run-up. */
  private Ahead away() {
    return where.to(task.targetX().orElseThrow() - RUN_UP_TURNS * approach().sign());
  }

  private double aim() {
    return Math.max(LEAST_AIM_TURNS, AIM_SHARE * task.toleranceTurns());
  }

  private Step set() {
    double beyond = beyond();
    Ahead target = where.to(task.targetX().orElseThrow());
    if (Math.abs(beyond) <= aim() || isNearEnough(target)) {
      return isFitToTurn()
          ? Step.of(Phase.TURN_ADJUSTER, task, target)
          : Step.of(Phase.GO_BEYOND, task, away());
    }
    if (beyond > 0) {
      return Step.of(Phase.COME_TO_TARGET, task, target);
    }
    if (onlyOnApproach() || !isKnownWell(where.u(approach().other()))) {
      return Step.of(Phase.GO_BEYOND, task, away());
    }
    boolean onStop = fromStopTurns.filter(d -> d <= ON_STOP_TURNS).isPresent();
    boolean slack =
        where.slack() == Slack.UNSEEN || where.slack(approach().other()) > LEAST_SLACK_TURNS;
    return Step.of(onStop && slack ? Phase.TAKE_UP : Phase.BACK_OFF, task, target);
  }

  /** A little off, and to be put right only by taking up the lost motion both ways again. */
  private boolean isNearEnough(Ahead target) {
    return Math.abs(beyond()) <= NEAR_ENOUGH_SHARE * task.toleranceTurns()
        && where.slack(target.toward()) > LEAST_SLACK_TURNS;
  }

  /**
   * What was set from the side of the stop and did not prove right is set as it is judged: a cam's
   * differential cannot spoil it there.
   */
  private boolean onlyOnApproach() {
    return task.kind() == Kind.MID_TRAVEL || task.progress() == Progress.LEFT;
  }

  private boolean isFitToTurn() {
    boolean approached = where.side().equals(Optional.of(approach()));
    return approached || (!onlyOnApproach() && isKnownWell(where.u()));
  }

  /** Well enough, or no better the other way. */
  private boolean isKnownWell(double u) {
    return u <= KNOWN_SHARE * task.toleranceTurns() || u <= 1.5 * where.u(approach());
  }
}
