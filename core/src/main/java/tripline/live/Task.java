package tripline.live;

import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Contact;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/**
 * A trip point to be set or proved, and how far that has come.
 *
 * @param cam cam name
 * @param edge which of two trip points of a closed window: "lower" or "upper"
 * @param from the end it is measured from and approached on
 * @param kind whether it is the limit of that end
 * @param contact the contact it is set by: the limit contact, else the cam's first
 * @param beyond the state that contact has beyond the trip point, on the side of {@code from}
 * @param state its state now; empty where it was not read
 * @param targetX where it is to change on the approach, x in turns; empty while the stop it is
 *     measured from is not known
 * @param distanceTurns the same from the stop, as the sheet has it, turns
 * @param toleranceTurns turns
 * @param early how much too soon it changes on the approach, turns; empty where not seen
 * @param decision of what was seen
 * @param progress how far it has come
 * @param furthestTurns furthest that the drive was on the far side of the target since the adjuster
 *     was turned, or else in this setting, turns
 */
public record Task(
    String cam,
    Optional<String> edge,
    End from,
    Kind kind,
    Contact contact,
    ContactState beyond,
    Optional<ContactState> state,
    OptionalDouble targetX,
    double distanceTurns,
    double toleranceTurns,
    Optional<Estimate> early,
    Decision decision,
    Progress progress,
    double furthestTurns) {

  /** What is set. */
  public enum Kind {
    /** The limit of an end. */
    END,
    /** Anything in between. */
    MID_TRAVEL
  }

  /** How far a trip point has come. */
  public enum Progress {
    /** Nobody knows where it trips. */
    UNSEEN,
    /** It was seen on the way out; it counts on the approach. */
    PASSED,
    /** It changed at rest, so its adjuster is being turned; nobody has said that he is done. */
    TRIPPED,
    /** Its adjuster was turned, which was said, and it has not been approached since. */
    ADJUSTED,
    /** It was approached and judged, as found. */
    FOUND,
    /** It was approached and judged since its adjuster was turned. */
    LEFT;

    /** Whether its adjuster was turned and it has not been approached since. */
    public boolean isTurned() {
      return this == TRIPPED || this == ADJUSTED;
    }

    /** Whether an approach was judged. */
    public boolean isJudged() {
      return this == FOUND || this == LEFT;
    }
  }

  /** The same with its contact in a state. */
  Task with(Optional<ContactState> now) {
    return new Task(
        cam,
        edge,
        from,
        kind,
        contact,
        beyond,
        now,
        targetX,
        distanceTurns,
        toleranceTurns,
        early,
        decision,
        progress,
        furthestTurns);
  }

  /** Whether nothing is left to be done about it. */
  public boolean isRight() {
    return progress.isJudged() && decision == Decision.ACCEPT;
  }

  /** Whether its contact is in the state it has beyond the trip point; empty where not read. */
  public Optional<Boolean> hasTripped() {
    return state.map(s -> s == beyond);
  }

  /** How far a place lies on the far side of the target, turns; negative on the side of the end. */
  OptionalDouble beyondTarget(double x) {
    return targetX.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of((targetX.getAsDouble() - x) * from.approach().sign());
  }
}
