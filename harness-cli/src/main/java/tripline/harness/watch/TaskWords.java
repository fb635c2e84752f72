package tripline.harness.watch;

import java.util.Locale;
import java.util.Optional;
import tripline.harness.report.FigureText;
import tripline.job.Direction;
import tripline.live.Step;
import tripline.live.Step.AdjusterWay;
import tripline.live.Task;
import tripline.live.Whereabouts;
import tripline.live.Whereabouts.Ahead;
import tripline.live.Whereabouts.Slack;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/** What a step says that sets or proves one trip point. */
record TaskWords(Step step, Task task, Optional<Whereabouts> where, Speech speech) {

  Words say() {
    return switch (step.phase()) {
      case TAKE_UP -> takeUp();
      case BACK_OFF -> backOff();
      case GO_BEYOND -> goBeyond();
      case COME_TO_TARGET ->
          Words.of(
              about("come to the target"),
              ahead() + ".",
              "Slowly at the end, and stand still at the target.",
              found());
      case TURN_ADJUSTER -> turnAdjuster();
      case TRIPPED -> tripped();
      case PROVE_AWAY -> proveAway();
      default ->
          Words.of(
              about("prove it: come back"),
              ahead() + ", and on past the point.",
              "Slowly and without a pause: where it changes on this way is what counts.");
    };
  }

  /** Which trip point, and what about it. */
  private String about(String what) {
    String which =
        task.kind() == Task.Kind.END
            ? Speech.end(task.from())
            : "CAM "
                + speech.safe(task.cam())
                + task.edge().map(e -> " (" + e + " edge)").orElse("");
    return which + ": " + what.toUpperCase(Locale.ROOT);
  }

  /** How far to turn; a sensor on the drive does not see what the lost motion takes. */
  private String ahead() {
    Ahead ahead = step.ahead().orElseThrow();
    boolean unseen =
        where
            .filter(w -> w.slack() == Slack.UNSEEN)
            .filter(w -> !w.side().equals(Optional.of(ahead.toward())))
            .isPresent();
    return "Turn "
        + Speech.toward(ahead.toward())
        + ": "
        + speech.both(ahead.handwheelTurns())
        + (unseen ? " and the lost motion" : "");
  }

  private Direction away() {
    return task.from().approach().other();
  }

  private Words takeUp() {
    if (where.filter(w -> w.slack() == Slack.UNSEEN).isPresent()) {
      return Words.of(
          about("stop touched"),
          "Turn back " + Speech.toward(away()) + " until the drive begins to follow.",
          "The reading moves then: the lost motion is taken up. Go on for "
              + speech.both(task.distanceTurns())
              + ".",
          found());
    }
    double slack = where.map(w -> w.slack(away())).orElse(0.0);
    return Words.of(
        about("stop touched"),
        ahead() + ".",
        "The first "
            + speech.both(slack)
            + " only take up the lost motion; the drive follows after that.",
        found());
  }

  private Words backOff() {
    double left = step.ahead().map(Ahead::travelTurns).orElse(0.0);
    return Words.of(
        about("back off"),
        ahead() + ".",
        "The drive is "
            + Speech.decimals(task.distanceTurns() - left, 2)
            + " of "
            + Speech.turns(task.distanceTurns())
            + " off the stop. Stand still at the target.",
        found());
  }

  private Words goBeyond() {
    String back = "past the target and come back " + Speech.toward(task.from()) + " afterwards.";
    boolean lost = task.kind() == Task.Kind.END && task.progress() != Task.Progress.LEFT;
    return Words.of(
        about("go past the target first"),
        ahead() + ".",
        lost
            ? "The lost motion is not known well enough yet: go " + back
            : "This point is set on the way it is judged on: go " + back,
        found());
  }

  private Words turnAdjuster() {
    String travelling = "it turns while travelling " + Speech.toward(task.from()) + ".";
    String way =
        step.adjusterWay()
            .map(
                w ->
                    switch (w) {
                      case WITH_TRAVEL -> "Not tripped yet: turn it the way " + travelling;
                      case AGAINST_TRAVEL ->
                          "Tripped already: first turn it the other way from how " + travelling;
                    })
            .orElse("Its contact is not read.");
    String trips = task.beyond() == ContactState.OPEN ? "opens" : "closes";
    String back = task.beyond() == ContactState.OPEN ? "closes" : "opens";
    boolean tripped = step.adjusterWay().equals(Optional.of(AdjusterWay.AGAINST_TRAVEL));
    return Words.of(
        about("turn now"),
        "Watch "
            + speech.safe(task.contact().name())
            + " and turn the adjuster of cam "
            + speech.safe(task.cam())
            + " until it "
            + (tripped
                ? back + "; pause, then back until it just " + trips + "."
                : "just " + trips + "."),
        way,
        "Isolated, locked out, proved dead?",
        found());
  }

  private Words tripped() {
    String ahead = ahead();
    return Words.of(
        about("tripped"),
        speech.safe(task.contact().name()) + " has changed: take the tool away and press a.",
        "Then prove it: t" + ahead.substring(1) + ", past the point, and come back.");
  }

  private Words proveAway() {
    String why =
        switch (task.progress()) {
          case TRIPPED, ADJUSTED ->
              "The cam's gear must have engaged again: approach the point once more.";
          case PASSED, UNSEEN ->
              "It was seen on the way out; what counts is the way "
                  + Speech.toward(task.from())
                  + ".";
          case FOUND, LEFT ->
              "Too near a limit for how well it was measured: approach it again, slowly.";
        };
    return Words.of(about("prove it: go past the point"), ahead() + ".", why, found());
  }

  /** Where it changed on the approach, beside where it should. */
  private String found() {
    if (task.early().isEmpty()) {
      return "";
    }
    Estimate early = task.early().get();
    String text =
        "Last approach: changed "
            + FigureText.interval(task.distanceTurns() + early.value(), early.expanded95())
            + " from the "
            + task.from().word()
            + " stop, for "
            + FigureText.target(task.distanceTurns(), task.toleranceTurns())
            + ": "
            + Speech.turns(Math.abs(early.value()))
            + (early.value() > 0 ? " early." : " late.");
    return speech.own(text);
  }
}
