package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tripline.develop.Development;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.TripPlan;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.travel.Coordinate;

/**
 * What to turn: the move of a trip point that is out of place, and the procedure (<em>common
 * practice</em>).
 *
 * @param turns move of the trip point, handwheel turns, + toward open
 * @param words the move in one sentence
 * @param steps the procedure, in order
 */
public record Adjustment(double turns, String words, List<String> steps) {
  private static final double GUARD = 1.645;

  /**
   * An undecided trip point nearer to its target than this share of the tolerance is left alone.
   */
  private static final double WORTH_TURNING = 1.0 / 3;

  /** How far to go past a mid-travel target before coming back to it, turns. */
  private static final double RUN_UP_TURNS = 1.0;

  public Adjustment {
    steps = List.copyOf(steps);
  }

  /** The same move in degrees of the handwheel. */
  public double degrees() {
    return 360 * turns;
  }

  /**
   * Advice for one trip point: where it is rejected, or undecided and off its target for certain.
   * Empty where it is accepted, where its target is not known, or where the uncertainty is larger
   * than the move would be.
   */
  public static Optional<Adjustment> of(CamJudgement cam, Development development) {
    if (cam.decision() == Decision.ACCEPT || cam.deviation().isEmpty()) {
      return Optional.empty();
    }
    Estimate off = cam.deviation().orElseThrow();
    double size = Math.abs(off.value());
    double tolerance = cam.target().toleranceTurns().orElse(0);
    boolean worth = size > GUARD * off.u() && size > WORTH_TURNING * tolerance;
    return worth ? Optional.of(new Advice(cam, development, off.value()).give()) : Optional.empty();
  }

  private record Advice(CamJudgement cam, Development development, double off) {
    Adjustment give() {
      return new Adjustment(-off, words(), steps());
    }

    private Direction approach() {
      return cam.target().from().approach();
    }

    private boolean early() {
      return cam.target().isEarly(off);
    }

    private String words() {
      String toward = off > 0 ? "closed" : "open";
      return String.format(
          Locale.ROOT,
          "Move the trip point of cam %s%s %s toward %s: it trips too %s while %s.",
          cam.target().cam(),
          cam.target().edge().word().map(w -> " (" + w + " edge)").orElse(""),
          Amounts.turnsAndDegrees(Math.abs(off)),
          toward,
          early() ? "early" : "late",
          approach().word());
    }

    private List<String> steps() {
      List<String> steps = new ArrayList<>();
      steps.add("Isolate, lock out, tag and prove dead; change over to the handwheel.");
      if (cam.target().plan().unit() == TripPlan.Unit.TURNS) {
        fromTheStop(steps);
      } else {
        midTravel(steps);
      }
      turnAdjuster(steps);
      steps.add(
          "Prove it: stroke past the point and back; the trip point must not have moved. Record it"
              + " again.");
      return steps;
    }

    /** Touch the stop, take up the lost motion, go on for the distance. */
    private void fromTheStop(List<String> steps) {
      End end = cam.target().from();
      steps.add("Run by hand to the " + end.word() + " stop and touch it; do not force it.");
      steps.add(
          "Turn back toward " + end.other().word() + " until the lost motion is taken up" + lost());
      steps.add(
          "Go on for "
              + Amounts.turnsAndDegrees(cam.target().plan().distance())
              + " of handwheel.");
    }

    /** Come to the target from the judged direction. */
    private void midTravel(List<String> steps) {
      String from = approach().toward().other().word();
      double target = cam.target().x().map(Estimate::value).orElse(0.0);
      Coordinate coordinate = development.coordinate();
      boolean counted = coordinate.closedStop().isPresent();
      double left = coordinate.span().map(span -> span.value() - target).orElse(target);
      String place =
          counted
              ? Amounts.turns(target) + " from the closed stop"
              : Amounts.turns(left) + " from the open stop";
      steps.add(
          String.format(
              Locale.ROOT,
              "Run by hand to the %s side of the point, %s past it and the lost motion besides%s",
              from,
              Amounts.turns(RUN_UP_TURNS),
              lost()));
      steps.add(
          String.format(
              Locale.ROOT,
              "Come back toward %s and stand at the target: %s (%s %% from %s).",
              approach().toward().word(),
              place,
              Amounts.percent(cam.target().plan().distance()),
              cam.target().from().word()));
    }

    private void turnAdjuster(List<String> steps) {
      String toward = approach().toward().word();
      String adjuster = "the adjuster of cam " + cam.target().cam();
      steps.add(
          early()
              ? "Its contacts have tripped already here: turn "
                  + adjuster
                  + " the other way from how it turns while travelling toward "
                  + toward
                  + ", until they just change."
              : "Its contacts have not tripped here yet: turn "
                  + adjuster
                  + " the way it turns while travelling toward "
                  + toward
                  + ", until they just change.");
    }

    private String lost() {
      Optional<Estimate> lost =
          development.coordinate().lostMotion().filter(l -> l.value() > 2 * l.u());
      return lost.map(l -> ": about " + Amounts.turnsAndDegrees(l.value()) + ".")
          .orElse(": when the drive begins to follow.");
    }
  }
}
