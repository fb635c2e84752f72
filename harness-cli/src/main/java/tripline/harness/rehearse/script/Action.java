package tripline.harness.rehearse.script;

import java.util.OptionalDouble;
import tripline.job.End;
import tripline.link.MarkKind;

/** What one line of a script says to do. */
public sealed interface Action {
  /** Something that takes its time: the next line of a script waits until it is over. */
  sealed interface Lasting extends Action {}

  /** Turn the handwheel toward an end, so many turns or to the hard stop. */
  record Crank(End toward, OptionalDouble turns, OptionalDouble turnsPerS) implements Lasting {}

  /** Turn the handwheel until the drive stands at x. */
  record CrankTo(double x, OptionalDouble turnsPerS) implements Lasting {}

  /** Run the motor toward an end. */
  record Run(End toward) implements Lasting {}

  /** Move a cam's trip point, + toward open. */
  record Adjust(String cam, double turns) implements Lasting {}

  /** Turn a cam's adjuster until it trips here. */
  record SetCam(String cam) implements Lasting {}

  /** Let time pass. */
  record Pause(double seconds) implements Lasting {}

  /** Wait for the host. */
  record Await(Host what) implements Lasting {}

  /** What a host does. */
  enum Host {
    START,
    STOP
  }

  /** Let go of handwheel, motor button, adjuster. */
  record Halt() implements Action {}

  /** Press the logger's button. */
  record Press(MarkKind kind, String text) implements Action {}

  /** Do something later, while other lines go on. */
  record Later(double seconds, Action action) implements Action {}

  /** Pull the logger's plug. */
  record Unplug() implements Action {}

  /** Put it back. */
  record Plug() implements Action {}

  /** Bit errors on the line, both ways, from now on. */
  record BitErrors(double rate) implements Action {}

  /** Nothing of what the logger sends gets through for so long. */
  record Stall(double seconds) implements Action {}

  /** The next so many messages of the logger vanish on the line. */
  record Lose(int messages) implements Action {}

  /** The logger loses so many samples, and says so. */
  record Overrun(int samples) implements Action {}

  /** The logger's clock steps. */
  record StepClock(double seconds) implements Action {}

  /** The logger loses its power for a moment. */
  record Restart() implements Action {}

  /** Say how the valve really is. */
  record SayTruth() implements Action {}

  /** Say where it stands. */
  record SayWhere() implements Action {}

  /** Say what can be said. */
  record SayHelp() implements Action {}

  /** End the rehearsal. */
  record Quit() implements Action {}
}
