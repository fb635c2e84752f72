package tripline.harness.watch;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ScriptedRig;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.serial.Pty;

/** A rig on a pseudo terminal in real time; keeps when each contact edge happened. */
final class LiveRig implements AutoCloseable {
  /** An edge, by the host's clock. */
  record Edge(int channel, long wallNs) {}

  final Pty pty = Pty.open();
  private final ScriptedRig bench;
  private final List<Edge> edges = new ArrayList<>();
  private final ConcurrentLinkedQueue<String> lines = new ConcurrentLinkedQueue<>();
  private final byte[] received = new byte[1024];
  private final Thread thread = new Thread(this::run, "rig");
  private volatile boolean ended;
  private volatile boolean idle = true;
  private volatile Throwable fault;

  LiveRig(RigPlan plan) {
    bench = new ScriptedRig(plan, this::send);
    thread.setDaemon(true);
    thread.start();
  }

  private void send(byte[] bytes, int length) {
    try {
      pty.write(bytes, 0, length);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Does a line once those before it are done. */
  void then(String line) {
    idle = false;
    lines.add(line);
  }

  /** Whether all lines are done. */
  boolean isIdle() {
    return idle;
  }

  private void run() {
    try {
      long startNs = System.nanoTime();
      long rigNs = bench.rig.nowNs();
      while (!ended) {
        next();
        while (bench.rig.nowNs() - rigNs < System.nanoTime() - startNs) {
          bench.step();
          note(startNs - rigNs);
        }
        int got = pty.read(received, 1);
        if (got > 0) {
          bench.rig.receive(received, got);
        } else if (got < 0) {
          LockSupport.parkNanos(1_000_000);
        }
      }
    } catch (BadLine | RuntimeException e) {
      fault = e;
    }
  }

  private void next() throws BadLine {
    if (bench.idle()) {
      String line = lines.poll();
      if (line != null) {
        bench.follow(line);
      } else {
        idle = true;
      }
    }
  }

  private synchronized void note(long offsetNs) {
    for (int e = 0; e < bench.rig.valve().edges(); e++) {
      edges.add(new Edge(bench.rig.valve().edgeChannel(e), bench.rig.valve().edgeNs(e) + offsetNs));
    }
  }

  /** Edges so far. */
  synchronized List<Edge> edges() {
    return List.copyOf(edges);
  }

  @Override
  public void close() {
    ended = true;
    Threads.join(thread);
    pty.close();
    if (fault != null) {
      throw new AssertionError("the rig failed", fault);
    }
  }
}
