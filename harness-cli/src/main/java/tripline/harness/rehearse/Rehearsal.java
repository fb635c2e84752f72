package tripline.harness.rehearse;

import java.io.PrintWriter;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.LinkFailure;
import tripline.harness.rehearse.port.VirtualPort;
import tripline.harness.rehearse.script.Action;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.script.LineReader;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.job.Cam;

/** A rig at a port, in real time or so many times faster, until somebody ends it. */
public final class Rehearsal {
  private static final long TICK_NS = 1_000_000;

  /** Further behind than this, time is let slip rather than made up for. */
  private static final long MOST_BEHIND_NS = 2_000_000_000L;

  /** How long the last bytes have to reach the host. */
  private static final long PARTING_NS = 300_000_000L;

  private static final int CHUNK = 2048;

  private final Rig rig;
  private final LineReader reader;
  private final VirtualPort.Maker ports;
  private final Pace pace;
  private final double speed;
  private final Voice voice;
  private final Director director;
  private final byte[] chunk = new byte[CHUNK];
  private @Nullable VirtualPort port;
  private long keyboardLine;

  /**
   * @param speed how many times faster than real time, &gt; 0
   * @param answers what was asked for
   * @param notes what goes on
   */
  public Rehearsal(
      RigPlan plan,
      VirtualPort.Maker ports,
      Pace pace,
      double speed,
      PrintWriter answers,
      PrintWriter notes) {
    rig = new Rig(plan);
    reader = reader(plan.sheet().cams());
    this.ports = ports;
    this.pace = pace;
    this.speed = speed;
    voice = new Voice(answers, notes);
    director = new Director(rig, stage());
  }

  /** Reads lines about these cams. */
  public static LineReader reader(List<Cam> cams) {
    return new LineReader(cams.stream().map(Cam::name).toList());
  }

  private Director.Stage stage() {
    return new Director.Stage() {
      @Override
      public void unplug() {
        pullPlug();
      }

      @Override
      public void plug() {
        putPlug();
      }

      @Override
      public void begins(String line) {
        voice.note(rig, line);
      }

      @Override
      public void cameToRest() {
        voice.note(rig, "  " + Voice.where(rig));
      }

      @Override
      public void say(Action what) {
        voice.say(rig, what);
      }
    };
  }

  /**
   * Plugs in, greets, and goes on until a line says quit or all lines are over.
   *
   * @param greeting printed once the port is there
   * @throws InputFailure for a line of a program that says nothing sensible
   * @throws LinkFailure if the port cannot be made, or goes away by itself
   */
  public void run(List<String> greeting, List<ScriptLine> script, LineSource lines) {
    director.follow(script);
    rig.logger().remember();
    putPlug();
    try {
      voice.answer(greeting);
      long originNs = pace.nanoTime();
      while (!over(lines)) {
        long dueNs = (long) ((pace.nanoTime() - originNs) * speed);
        if (dueNs - rig.nowNs() > MOST_BEHIND_NS * Math.max(1, speed)) {
          originNs = pace.nanoTime() - (long) (rig.nowNs() / speed);
        } else {
          goOnUntil(dueNs, lines);
        }
        pace.pause(TICK_NS);
      }
      part();
    } finally {
      pullPlug();
    }
  }

  private boolean over(LineSource lines) {
    return director.quit() || (lines.ended() && director.idle());
  }

  private void goOnUntil(long dueNs, LineSource lines) {
    while (rig.nowNs() < dueNs && !over(lines)) {
      listen(lines);
      director.step();
      rig.step();
      exchange();
    }
  }

  private void listen(LineSource lines) {
    lines.poll().ifPresent(text -> hear(text, lines.when()));
  }

  private void hear(String text, LineSource.When when) {
    keyboardLine++;
    try {
      if (when == LineSource.When.AT_ONCE) {
        director.atOnce(reader.read(text).orElse(new Action.Halt()));
      } else {
        reader
            .read(text)
            .ifPresent(action -> director.follow(List.of(new ScriptLine(text.strip(), action))));
      }
    } catch (BadLine e) {
      if (when == LineSource.When.IN_TURN) {
        throw new InputFailure("standard input", keyboardLine, 0, e.problem());
      }
      voice.note(rig, e.problem());
    }
  }

  private void exchange() {
    VirtualPort plugged = port;
    if (plugged == null) {
      return;
    }
    if (!plugged.alive()) {
      throw new LinkFailure(plugged.name(), "went away: the program that holds it has ended");
    }
    for (int n = plugged.read(chunk); n > 0; n = plugged.read(chunk)) {
      rig.receive(chunk, n);
    }
    for (int n = rig.send(chunk, plugged.room()); n > 0; n = rig.send(chunk, plugged.room())) {
      plugged.write(chunk, n);
    }
  }

  /** What was said last shall be heard. */
  private void part() {
    long startNs = pace.nanoTime();
    while (port != null && pace.nanoTime() - startNs < PARTING_NS) {
      rig.step();
      exchange();
      pace.pause(TICK_NS);
    }
  }

  private void pullPlug() {
    if (port != null) {
      port.close();
      port = null;
    }
  }

  private void putPlug() {
    if (port == null) {
      port = ports.make();
      if (rig.nowNs() > 0) {
        rig.logger().lineOpened();
      }
    }
  }
}
