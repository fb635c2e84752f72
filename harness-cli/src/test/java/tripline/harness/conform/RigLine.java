package tripline.harness.conform;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.LongSupplier;
import tripline.harness.rehearse.Rig;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.valve.Hand;
import tripline.harness.serial.ByteLine;
import tripline.job.End;

/**
 * A rehearsal's rig as a line, by the rig's own time: a read lets it pass. Its valve is turned to
 * and fro about a trip point, so that contacts change, or left alone.
 */
final class RigLine implements ByteLine, LongSupplier {
  /** Across the closing limit's trip point, lost motion and all. */
  private static final double TO_AND_FRO_TURNS = 0.9;

  private static final double TURNS_PER_S = 1.5;

  /** What is done with the valve meanwhile. */
  enum Valve {
    TURNED,
    LEFT_ALONE
  }

  private final Rig rig;
  private final Valve valve;
  private final Broken broken;
  private final ByteArrayOutputStream due = new ByteArrayOutputStream();
  private final byte[] chunk = new byte[4096];
  private End toward = End.OPEN;

  RigLine(RigPlan plan, Broken broken) {
    this(plan, broken, Valve.TURNED);
  }

  RigLine(RigPlan plan, Broken broken, Valve valve) {
    rig = new Rig(plan);
    this.valve = valve;
    this.broken = broken;
    double trip = rig.valve().tripTurns(0, 0);
    rig.move(Hand.to(rig.valve(), trip + TO_AND_FRO_TURNS / 3, OptionalDouble.of(5)));
    while (rig.moving()) {
      rig.step();
    }
  }

  Rig rig() {
    return rig;
  }

  @Override
  public long getAsLong() {
    return rig.nowNs();
  }

  @Override
  public String name() {
    return "rig";
  }

  @Override
  public int read(byte[] into) {
    long endNs = rig.nowNs() + READ_WAIT_MS * 1_000_000L;
    while (due.size() == 0 && rig.nowNs() < endNs) {
      step();
    }
    byte[] all = due.toByteArray();
    int length = Math.min(all.length, into.length);
    System.arraycopy(all, 0, into, 0, length);
    due.reset();
    due.write(all, length, all.length - length);
    return length;
  }

  private void step() {
    if (!rig.moving() && valve == Valve.TURNED) {
      toward = toward.other();
      rig.move(Hand.turns(rig.valve(), toward, TO_AND_FRO_TURNS, OptionalDouble.of(TURNS_PER_S)));
    }
    rig.step();
    for (int n = rig.send(chunk, chunk.length); n > 0; n = rig.send(chunk, chunk.length)) {
      due.writeBytes(broken.toHost(Arrays.copyOf(chunk, n), rig.nowNs()));
    }
    due.writeBytes(broken.later(rig.nowNs()));
  }

  @Override
  public void write(byte[] bytes, int length) {
    byte[] taken = broken.toLogger(Arrays.copyOf(bytes, length), rig.nowNs());
    rig.receive(taken, taken.length);
  }

  @Override
  public void close() {}
}
