package tripline.harness.ending;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;

/**
 * Whether the process was told to end. Once listened for, the first such signal is only a request:
 * the command ends in its own time and way, with its own exit status. A second one ends the process
 * at once, when what must not be left undone is done.
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

  private final AtomicBoolean asked = new AtomicBoolean();
  private volatile Runnable last = () -> {};

  private EndRequest() {}

  /** Begins to listen for signals. */
  public static EndRequest ofProcess() {
    EndRequest request = new EndRequest();
    for (String name : SIGNALS) {
      Signals.on(name, request::request);
    }
    return request;
  }

  private void request() {
    if (asked.getAndSet(true)) {
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
  }

  /** What is still done, for a second at most, before a second signal ends the process. */
  public void atOnce(Runnable what) {
    last = what;
  }

  /** Whether the process was told to end. */
  @Override
  public boolean getAsBoolean() {
    return asked.get();
  }
}
