package tripline.harness.rehearse;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.rehearse.script.Action;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.script.LineReader;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.link.Encoding;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;

/** A rig with a director and a host's end of the cable, in no time at all. */
public final class ScriptedRig {
  public final Rig rig;
  final Director director;
  final List<String> said = new ArrayList<>();
  final LinkEncoder encoder = new LinkEncoder();
  public boolean plugged = true;
  private Encoding spoken = Encoding.FRAMES;
  private final LineReader reader;
  private final Host host;
  private final byte[] chunk = new byte[4096];

  /** Takes what the logger sends. */
  public interface Host {
    void accept(byte[] bytes, int length);
  }

  public ScriptedRig(RigPlan plan, Host host) {
    this.host = host;
    rig = new Rig(plan);
    reader = Rehearsal.reader(plan.sheet().cams());
    director =
        new Director(
            rig,
            new Director.Stage() {
              @Override
              public void unplug() {
                plugged = false;
              }

              @Override
              public void plug() {
                plugged = true;
                rig.logger().lineOpened();
              }

              @Override
              public void begins(String line) {}

              @Override
              public void cameToRest() {
                said.add(Voice.where(rig));
              }

              @Override
              public void say(Action what) {
                said.add(what.toString());
              }
            });
  }

  /** Sends a command, after a zero byte where the encoding changes (SPEC H2). */
  public int send(LinkMessage command, Encoding encoding) {
    int sequence = encoder.nextSequence();
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    if (encoding != spoken) {
      spoken = encoding;
      rig.receive(new byte[] {0}, 1);
    }
    rig.receive(out, encoder.encode(command, encoding, out, 0));
    step();
    return sequence;
  }

  public void follow(String... lines) throws BadLine {
    for (String line : lines) {
      director.follow(List.of(new ScriptLine(line, reader.read(line).orElseThrow())));
    }
  }

  /** Does these lines to their end. */
  public void play(String... lines) throws BadLine {
    follow(lines);
    long startNs = rig.nowNs();
    while (!director.idle()) {
      step();
      if (rig.nowNs() - startNs > 3_600_000_000_000L) {
        throw new AssertionError("an hour, and still not over");
      }
    }
  }

  /** Whether all that was to be followed is done. */
  public boolean idle() {
    return director.idle();
  }

  /** Lets so much time pass. */
  public void pass(double seconds) {
    long endNs = rig.nowNs() + (long) (seconds * 1e9);
    while (rig.nowNs() < endNs) {
      step();
    }
  }

  public void step() {
    director.step();
    rig.step();
    if (plugged) {
      for (int n = rig.send(chunk, chunk.length); n > 0; n = rig.send(chunk, chunk.length)) {
        host.accept(chunk, n);
      }
    }
  }
}
