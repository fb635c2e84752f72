package tripline.live;

import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.live.Whereabouts.Ahead;

/**
 * What to do next.
 *
 * @param phase what
 * @param end the end it concerns; empty where either will do, or neither is meant
 * @param task the trip point it concerns
 * @param ahead how far to turn the handwheel, and which way
 * @param unseen what the answer still waits for, in the phase {@link Phase#STROKE}: names of cams
 *     and contacts
 */
public record Step(
    Phase phase,
    Optional<End> end,
    Optional<Task> task,
    Optional<Ahead> ahead,
    List<String> unseen) {

  public Step {
    unseen = List.copyOf(unseen);
  }

  /** The steps of setting an end, in the order they are usually gone through. */
  public enum Phase {
    /** No position is read. */
    NO_POSITION,
    /** Run to a hard stop. */
    FIND_STOP,
    /** It stands as far out as it ever was: the operator is to say whether that is the stop. */
    CONFIRM_STOP,
    /** On the stop: turn back until the lost motion is taken up. */
    TAKE_UP,
    /** Go on from the stop to the target. */
    BACK_OFF,
    /** Go past the target by a run-up, so that it can be approached. */
    GO_BEYOND,
    /** Come to the target on the approach that is judged. */
    COME_TO_TARGET,
    /** At the target: turn the adjuster. */
    TURN_ADJUSTER,
    /** The contact has just changed. */
    TRIPPED,
    /** Prove it: go away from the end past the trip point. */
    PROVE_AWAY,
    /** Prove it: come back past the trip point. */
    PROVE_BACK,
    /** Both ends are set and proved: stroke from stop to stop, both ways. */
    STROKE,
    /** The whole is accepted. */
    ACCEPTED,
    /** The ends are right, something else is not. */
    REJECTED
  }

  /** Which way an adjuster is turned. <em>Common practice.</em> */
  public enum AdjusterWay {
    /** The way it turns while travelling toward its end: not tripped yet. */
    WITH_TRAVEL,
    /** The other way: tripped already. */
    AGAINST_TRAVEL
  }

  /** Which way to turn the adjuster; empty where there is none to turn or no contact was read. */
  public Optional<AdjusterWay> adjusterWay() {
    return phase == Phase.TURN_ADJUSTER
        ? task.flatMap(Task::hasTripped)
            .map(tripped -> tripped ? AdjusterWay.AGAINST_TRAVEL : AdjusterWay.WITH_TRAVEL)
        : Optional.empty();
  }

  static Step of(Phase phase) {
    return new Step(phase, Optional.empty(), Optional.empty(), Optional.empty(), List.of());
  }

  static Step of(Phase phase, Optional<End> end) {
    return new Step(phase, end, Optional.empty(), Optional.empty(), List.of());
  }

  static Step of(Phase phase, Task task) {
    return new Step(
        phase, Optional.of(task.from()), Optional.of(task), Optional.empty(), List.of());
  }

  static Step of(Phase phase, Task task, Ahead ahead) {
    return new Step(
        phase, Optional.of(task.from()), Optional.of(task), Optional.of(ahead), List.of());
  }
}
