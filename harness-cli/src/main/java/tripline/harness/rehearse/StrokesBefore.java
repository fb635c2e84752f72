package tripline.harness.rehearse;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.OptionalDouble;
import tripline.harness.rehearse.logger.LoggerMake;
import tripline.harness.rehearse.logger.StoredRecording;
import tripline.harness.rehearse.logger.VirtualLogger;
import tripline.harness.rehearse.valve.Hand;
import tripline.harness.rehearse.valve.Mover;
import tripline.harness.rehearse.valve.ValveBuild;
import tripline.harness.rehearse.valve.VirtualValve;
import tripline.job.End;
import tripline.link.Encoding;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MarkKind;
import tripline.link.Start;
import tripline.link.Stop;

/** What the logger has in its memory: strokes that somebody made on this valve before, as found. */
final class StrokesBefore {
  private static final long RATE_MILLI_HZ = 100_000;
  private static final int GATHER_MS = 1_000;
  private static final int RESTS_S = 3;
  private static final long NS_A_MICRO = 1000;

  private final VirtualValve valve;
  private final VirtualLogger logger;
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final byte[] chunk = new byte[4096];

  private StrokesBefore(ValveBuild build, LoggerMake make, long seed) {
    valve = new VirtualValve(build, seed);
    LoggerMake inFrames = new LoggerMake(make.identity(), make.channels(), Encoding.FRAMES);
    logger = new VirtualLogger(inFrames, Rig.inputs(valve), List::of, 0, 0);
    say(new Start(RATE_MILLI_HZ, GATHER_MS));
  }

  static List<StoredRecording> of(ValveBuild build, LoggerMake make, long seed) {
    return List.of(
        new StrokesBefore(build, make, seed + 1).standing(),
        new StrokesBefore(build, make, seed + 2).strokes());
  }

  private StoredRecording standing() {
    rest(RESTS_S);
    return finished(101, "at rest");
  }

  private StoredRecording strokes() {
    touch(End.CLOSED, MarkKind.CLOSED_STOP);
    touch(End.OPEN, MarkKind.OPEN_STOP);
    touch(End.CLOSED, MarkKind.CLOSED_STOP);
    return finished(102, "as found, by hand");
  }

  private void touch(End end, MarkKind kind) {
    Mover hand = Hand.toStop(valve, end, OptionalDouble.empty());
    while (hand.step(valve)) {
      tick();
    }
    logger.press(kind, "");
    rest(1);
  }

  private void rest(int seconds) {
    long untilNs = valve.nowNs() + seconds * 1_000_000_000L;
    while (valve.nowNs() < untilNs) {
      valve.rest();
      tick();
    }
  }

  private void tick() {
    logger.advance(valve.nowNs());
    for (int n = logger.take(chunk, chunk.length); n > 0; n = logger.take(chunk, chunk.length)) {
      bytes.write(chunk, 0, n);
    }
  }

  private void say(LinkMessage command) {
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    int length = new LinkEncoder().encode(command, Encoding.FRAMES, out, 0);
    logger.receive(out, 0, length);
    tick();
  }

  private StoredRecording finished(long id, String label) {
    long rows = logger.samples();
    say(new Stop());
    return new StoredRecording(id, bytes.toByteArray(), rows, 0, valve.nowNs() / NS_A_MICRO, label);
  }
}
