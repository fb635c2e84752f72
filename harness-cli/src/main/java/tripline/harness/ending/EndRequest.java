package tripline.harness.ending;

import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * Whether the process was told to end. Once listened for, the first such signal is only a request:
 * the command ends in its own time and way, with its own exit status. One that comes later ends the
 * process at once, when what must not be left undone is done. Signals close together are one
 * request: a terminal that is closed, and whoever stops a process and its group, send two.
 *
 * <p>The runtime offers this in module {@code jdk.unsupported} only, whose types the compiler warns
 * of without a way to say no; so they are found by name. A shutdown hook would come too late: by
 * then the serial library closes its ports beside it.
 */
public final class EndRequest implements BooleanSupplier {
  private static final String[] SIGNALS = {"INT", "TERM", "HUP"};

  /** What a shell makes of SIGINT: 128 and its number. */
  private static final int INTERRUPTED = 130;

  /** What is still to be done may take so long, ms. */
  private static final long LAST_MS = 1000;

  /** Signals no further apart are one request, ns: faster than a hand that has lost patience. */
  static final long SAME_NS = 500_000_000;

  private static final long NEVER = Long.MIN_VALUE;

  private final AtomicLong askedNs = new AtomicLong(NEVER);
  private volatile Runnable last = () -> {};

  EndRequest() {}

  /** Begins to listen for signals. */
  public static EndRequest ofProcess() {
    EndRequest request = new EndRequest();
    for (String name : SIGNALS) {
      Signals.on(name, request::request);
    }
    return request;
  }

  private void request() {
    if (insists(System.nanoTime())) {
      endAtOnce();
    }
  }

  /** Notes a signal; whether it is a request of its own after another one. */
  boolean insists(long nowNs) {
    return !askedNs.compareAndSet(NEVER, nowNs) && nowNs - askedNs.get() > SAME_NS;
  }

  private synchronized void endAtOnce() {
    Thread doing = new Thread(last, "last");
    doing.setDaemon(true);
    doing.start();
    try {
      doing.join(LAST_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(INTERRUPTED);
  }

  /** What is still done, for a second at most, before a second signal ends the process. */
  public void atOnce(Runnable what) {
    last = what;
  }

  /** Whether the process was told to end. */
  @Override
  public boolean getAsBoolean() {
    return askedNs.get() != NEVER;
  }
}
