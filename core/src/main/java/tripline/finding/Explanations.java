package tripline.finding;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What explains what: one cause, one finding. A finding is dropped where another one that touches
 * the same contact, the same cam as a whole, or the same recording is its cause. A note is the
 * cause of no fault: what rejects a valve is always said.
 */
final class Explanations {
  private static final Set<Code> CONTACT_WRONG =
      EnumSet.of(
          Code.CONTACTS_EXCHANGED,
          Code.CONTACT_INVERTED,
          Code.CONTACT_STUCK_OPEN,
          Code.CONTACT_STUCK_CLOSED,
          Code.CONTACT_OFF_CAM,
          Code.CONTACT_INTERMITTENT);
  private static final Set<Code> CAM_WRONG =
      EnumSet.of(Code.CAM_SILENT, Code.CAM_EARLY, Code.CAM_LATE, Code.TRIP_DRIFT);
  private static final Set<Code> DOWNSTREAM =
      EnumSet.of(
          Code.LAMPS_DARK,
          Code.LAMPS_WRONG,
          Code.BYPASS_SHORT,
          Code.STOPPED_ON_TORQUE,
          Code.LIMIT_AFTER_TORQUE,
          Code.COAST_REACHES_STOP);
  private static final Set<Code> MEASURED_IN_TRAVEL =
      EnumSet.of(
          Code.CAM_EARLY,
          Code.CAM_LATE,
          Code.CONTACTS_EXCHANGED,
          Code.CONTACT_OFF_CAM,
          Code.CONTACT_INTERMITTENT,
          Code.TRIP_DRIFT,
          Code.TRIP_SCATTER,
          Code.DIFFERENTIAL_LARGE,
          Code.LOST_MOTION_LARGE,
          Code.COAST_REACHES_STOP,
          Code.BYPASS_SHORT,
          Code.SPAN_OFF,
          Code.RECORDING_APART,
          Code.CAM_SILENT,
          Code.CONTACT_STUCK_OPEN,
          Code.CONTACT_STUCK_CLOSED,
          Code.LAMPS_WRONG);

  private static final Set<Code> MEASURED_ON_A_SIDE =
      Stream.of(CONTACT_WRONG, CAM_WRONG, DOWNSTREAM)
          .flatMap(Set::stream)
          .collect(Collectors.toUnmodifiableSet());

  /** The table, with its reasons. */
  static final List<Rule> RULES =
      List.of(
          new Rule(
              CONTACT_WRONG,
              DOWNSTREAM,
              Relation.TOUCHES,
              "a contact that is wrong gives its lamp, its bypass and its end of travel away"),
          new Rule(
              CAM_WRONG,
              DOWNSTREAM,
              Relation.TOUCHES,
              "a cam out of place moves everything its contacts do"),
          new Rule(
              EnumSet.of(Code.CAM_SILENT),
              EnumSet.of(
                  Code.CONTACT_STUCK_OPEN,
                  Code.CONTACT_STUCK_CLOSED,
                  Code.CAM_EARLY,
                  Code.CAM_LATE,
                  Code.TRIP_DRIFT,
                  Code.TRIP_SCATTER),
              Relation.TOUCHES,
              "a cam that is not turned changes none of its contacts, and has no trip point"),
          new Rule(
              EnumSet.of(Code.CONTACTS_EXCHANGED),
              EnumSet.of(
                  Code.CONTACT_INVERTED,
                  Code.CONTACT_OFF_CAM,
                  Code.CONTACTS_OVERLAP,
                  Code.CAM_EARLY,
                  Code.CAM_LATE),
              Relation.TOUCHES,
              "two exchanged channels look like two inversions, or like cams out of place"),
          new Rule(
              EnumSet.of(
                  Code.CONTACT_INVERTED,
                  Code.CONTACT_STUCK_CLOSED,
                  Code.CONTACT_OFF_CAM,
                  Code.CONTACT_INTERMITTENT),
              EnumSet.of(Code.CONTACTS_OVERLAP, Code.CONTACT_CHATTER),
              Relation.TOUCHES,
              "such a contact is closed together with its opposite, and its bursts are its own"),
          new Rule(
              EnumSet.of(Code.CAM_EARLY, Code.CAM_LATE),
              EnumSet.of(Code.CONTACT_OFF_CAM),
              Relation.SAME_CAM,
              "where the reference contact is off alone, its cam is said to be out of place"),
          new Rule(
              EnumSet.of(Code.TRIP_DRIFT),
              EnumSet.of(Code.TRIP_SCATTER, Code.DIFFERENTIAL_LARGE, Code.CONTACTS_OVERLAP),
              Relation.SAME_CAM,
              "a trip point that creeps scatters, and differs from one stroke to the next"),
          new Rule(
              EnumSet.of(Code.TRIP_DRIFT),
              EnumSet.of(Code.CAM_EARLY, Code.CAM_LATE),
              Relation.CREPT_OUT,
              "a trip point that crept out of its tolerance was set right and did not stay"),
          new Rule(
              EnumSet.of(Code.CONTACT_CHATTER),
              EnumSet.of(Code.TRIP_SCATTER),
              Relation.SAME_CAM,
              "the first edge of a long burst falls here and there"),
          new Rule(
              EnumSet.of(Code.COAST_REACHES_STOP),
              EnumSet.of(Code.STROKE_TIME_OFF),
              Relation.ANY,
              "what runs on so far takes long to stand still"),
          new Rule(
              EnumSet.of(Code.POSITION_SLIP, Code.POSITION_FROZEN),
              MEASURED_IN_TRAVEL,
              Relation.ANY,
              "where the reading does not follow the valve nothing measured in travel stands"),
          new Rule(
              EnumSet.of(Code.POSITION_FROZEN),
              EnumSet.of(Code.CONTACT_MOVED_AT_REST, Code.POSITION_SLIP),
              Relation.ANY,
              "the drive did not stand still, the reading did"),
          new Rule(
              EnumSet.of(Code.TIME_REPEATED),
              EnumSet.of(Code.SAMPLES_LOST),
              Relation.REPEATS_LEAVE_HOLES,
              "a row with the stamp of the one before leaves a hole where its own should be"),
          new Rule(
              EnumSet.of(Code.SAMPLES_LOST),
              EnumSet.of(Code.POSITION_GAP),
              Relation.SAME_RECORDING,
              "rows that are lost take their positions with them"),
          new Rule(
              EnumSet.of(Code.STOPPED_ON_TORQUE, Code.MOTOR_REVERSED),
              EnumSet.of(Code.STROKE_TIME_OFF, Code.COAST_REACHES_STOP),
              Relation.ANY,
              "a stroke that did not end as meant has no time of its own"),
          new Rule(
              EnumSet.of(Code.CAM_EARLY, Code.CAM_LATE),
              EnumSet.of(Code.STROKE_TIME_OFF),
              Relation.MOVED_AS_LONG,
              "limits out of place make the stroke shorter or longer"));

  private Explanations() {}

  /** How cause and effect must hang together. */
  enum Relation {
    /** The same contact, or the effect's cam where the cause is about the cam as a whole. */
    TOUCHES {
      @Override
      boolean holds(Finding cause, Finding effect) {
        return cause.contacts().isEmpty()
            ? meet(cause.cams(), effect.cams())
            : meet(cause.contacts(), effect.contacts())
                || (effect.contacts().isEmpty() && meet(cause.cams(), effect.cams()));
      }
    },
    SAME_CAM {
      @Override
      boolean holds(Finding cause, Finding effect) {
        return meet(cause.cams(), effect.cams());
      }
    },
    SAME_RECORDING {
      @Override
      boolean holds(Finding cause, Finding effect) {
        return cause.recording().equals(effect.recording());
      }
    },
    /** The same cam, which moved further than half its excess over the tolerance explains. */
    CREPT_OUT {
      @Override
      boolean holds(Finding cause, Finding effect) {
        double moved = Math.abs(cause.figure("moved").orElse(0));
        double excess =
            Math.abs(effect.figure("deviation").orElse(0)) - effect.figure("tolerance").orElse(0);
        return meet(cause.cams(), effect.cams()) && moved / 2 >= excess;
      }
    },
    /** The same recording, with no more holes than repeats. */
    REPEATS_LEAVE_HOLES {
      @Override
      boolean holds(Finding cause, Finding effect) {
        return cause.recording().equals(effect.recording())
            && effect.figure("stretches").orElse(0) <= cause.figure("times").orElse(0);
      }
    },
    /** The cause moved a trip point as far as the drive runs in the time that is too much. */
    MOVED_AS_LONG {
      @Override
      boolean holds(Finding cause, Finding effect) {
        double moved = Math.abs(cause.figure("deviation").orElse(0));
        double excessS =
            Math.abs(
                    effect.figure("stroke_time_s").orElse(0)
                        - effect.figure("expected_s").orElse(0))
                - effect.figure("tolerance_s").orElse(0);
        return moved >= excessS * effect.figure("turns_per_s").orElse(0);
      }
    },
    ANY {
      @Override
      boolean holds(Finding cause, Finding effect) {
        return true;
      }
    };

    abstract boolean holds(Finding cause, Finding effect);

    private static boolean meet(Set<String> a, Set<String> b) {
      return !Collections.disjoint(a, b);
    }
  }

  /** Causes, effects they explain, how the two must hang together, and why. */
  record Rule(Set<Code> causes, Set<Code> effects, Relation relation, String reason) {
    boolean explains(Finding cause, Finding effect) {
      return causes.contains(cause.code())
          && effects.contains(effect.code())
          && relation.holds(cause, effect);
    }
  }

  /** What is left when every finding that another one explains is dropped. */
  static List<Finding> unexplained(List<Finding> seen) {
    return seen.stream().filter(f -> !explained(f, seen)).toList();
  }

  /**
   * What casts doubt on the side everything lies on is said before what is seen of contacts and
   * cams. It takes none of that away: a caution must not turn a rejection into an acceptance.
   */
  static List<Finding> causesFirst(List<Finding> ordered) {
    boolean consequence = ordered.stream().anyMatch(f -> MEASURED_ON_A_SIDE.contains(f.code()));
    if (!consequence) {
      return List.copyOf(ordered);
    }
    List<Finding> first = new ArrayList<>(ordered);
    first.sort(Comparator.comparing(f -> !RecordingApart.saysEndsExchanged(f)));
    return List.copyOf(first);
  }

  private static boolean explained(Finding effect, List<Finding> seen) {
    return seen.stream()
        .filter(cause -> !cause.equals(effect))
        .filter(c -> c.severity() != Severity.NOTE || effect.severity() != Severity.FAULT)
        .anyMatch(cause -> RULES.stream().anyMatch(rule -> rule.explains(cause, effect)));
  }
}
