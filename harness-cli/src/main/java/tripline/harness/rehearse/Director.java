package tripline.harness.rehearse;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.rehearse.script.Action;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.harness.rehearse.valve.Adjuster;
import tripline.harness.rehearse.valve.Hand;
import tripline.harness.rehearse.valve.Motor;
import tripline.harness.rehearse.valve.Mover;
import tripline.harness.rehearse.valve.VirtualValve;

/**
 * Does what the lines say. Those of a script one after the other, each when the one before it is
 * over; those of somebody at the keyboard at once, whatever is under way.
 */
final class Director {
  private static final double NS_A_SECOND = 1e9;

  /** What cannot be done on the rig itself. */
  interface Stage {
    /** The logger's plug is pulled. */
    void unplug();

    /** It is put back. */
    void plug();

    /** A line begins. */
    void begins(String line);

    /** Whatever moved has come to rest. */
    void cameToRest();

    /** Somebody wants to know. */
    void say(Action what);
  }

  private record Due(long timeNs, Action action) {}

  private final Rig rig;
  private final Stage stage;
  private final Deque<ScriptLine> script = new ArrayDeque<>();
  private final List<Due> later = new ArrayList<>();
  private Action.@Nullable Await awaited;
  private long pauseUntilNs;

  /** What is to move next, once what moves now has come to rest. */
  private Action.@Nullable Lasting next;

  private boolean moved;
  private boolean quit;

  Director(Rig rig, Stage stage) {
    this.rig = rig;
    this.stage = stage;
  }

  /** Puts lines at the end of the script. */
  void follow(List<ScriptLine> lines) {
    script.addAll(lines);
  }

  /** Somebody at the keyboard says something: it is done now. */
  void atOnce(Action action) {
    act(action);
  }

  /** Whether every line of the script is over. */
  boolean idle() {
    return script.isEmpty() && !busy() && !moved && later.isEmpty();
  }

  /** Whether somebody said quit. */
  boolean quit() {
    return quit;
  }

  /** Before each step of the rig. */
  void step() {
    for (Iterator<Due> each = later.iterator(); each.hasNext(); ) {
      Due due = each.next();
      if (due.timeNs() <= rig.nowNs()) {
        each.remove();
        act(due.action());
      }
    }
    move();
    while (!quit && !script.isEmpty() && !busy()) {
      ScriptLine line = script.remove();
      stage.begins(line.text());
      act(line.action());
      move();
    }
  }

  private void move() {
    if (!rig.moving()) {
      if (moved) {
        moved = false;
        stage.cameToRest();
      }
      if (next != null) {
        rig.move(mover(next));
        next = null;
        moved = true;
      }
    }
  }

  private boolean busy() {
    if (awaited != null) {
      boolean wanted = awaited.what() == Action.Host.START;
      awaited = rig.logger().running() == wanted ? null : awaited;
    }
    return awaited != null || next != null || rig.moving() || rig.nowNs() < pauseUntilNs;
  }

  private void act(Action action) {
    if (action instanceof Action.Lasting lasting) {
      last(lasting);
    } else if (action instanceof Action.Later after) {
      later.add(new Due(rig.nowNs() + ns(after.seconds()), after.action()));
    } else if (action instanceof Action.Halt) {
      rig.halt();
    } else if (action instanceof Action.Press press) {
      rig.logger().press(press.kind(), press.text());
    } else if (action instanceof Action.Unplug) {
      stage.unplug();
    } else if (action instanceof Action.Plug) {
      stage.plug();
    } else if (action instanceof Action.BitErrors errors) {
      rig.cable().errors(errors.rate());
    } else if (action instanceof Action.Stall stall) {
      rig.cable().stallUntil(rig.nowNs() + ns(stall.seconds()));
    } else if (action instanceof Action.Lose lose) {
      rig.logger().lose(lose.messages());
    } else if (action instanceof Action.Overrun overrun) {
      rig.logger().overrun(overrun.samples());
    } else if (action instanceof Action.StepClock step) {
      rig.logger().stepClock(ns(step.seconds()));
    } else if (action instanceof Action.Restart) {
      rig.logger().restart(rig.nowNs());
    } else if (action instanceof Action.Quit) {
      quit = true;
    } else {
      stage.say(action);
    }
  }

  private void last(Action.Lasting action) {
    if (action instanceof Action.Pause pause) {
      pauseUntilNs = rig.nowNs() + ns(pause.seconds());
    } else if (action instanceof Action.Await await) {
      awaited = await;
    } else {
      rig.halt();
      next = action;
    }
  }

  private Mover mover(Action.Lasting action) {
    VirtualValve valve = rig.valve();
    if (action instanceof Action.Crank crank) {
      return crank.turns().isPresent()
          ? Hand.turns(valve, crank.toward(), crank.turns().getAsDouble(), crank.turnsPerS())
          : Hand.toStop(valve, crank.toward(), crank.turnsPerS());
    } else if (action instanceof Action.CrankTo to) {
      return Hand.to(valve, to.x(), to.turnsPerS());
    } else if (action instanceof Action.Run run) {
      return new Motor(valve, run.toward());
    } else if (action instanceof Action.Adjust adjust) {
      return Adjuster.turn(valve.build().camIndex(adjust.cam()), adjust.turns());
    } else if (action instanceof Action.SetCam set) {
      return Adjuster.untilItTrips(valve, valve.build().camIndex(set.cam()));
    }
    throw new IllegalArgumentException("no mover does " + action);
  }

  private static long ns(double seconds) {
    return Math.round(seconds * NS_A_SECOND);
  }
}
