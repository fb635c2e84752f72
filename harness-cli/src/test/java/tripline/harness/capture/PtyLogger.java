package tripline.harness.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.NavigableMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import tripline.harness.serial.Pty;

/** A {@link SimLogger} at the other end of a pseudo terminal, on a thread of its own. */
final class PtyLogger implements AutoCloseable {
  /** How its time passes. */
  enum Pace {
    /** As ours. */
    REAL,
    /** As fast as the line takes what it says. */
    FAST
  }

  /** What is said in one go; a pty takes some kilobytes at a time. */
  private static final long STEP_MICROS = 200_000;

  private static final long PATIENCE_S = 30;

  private final SimLogger logger;
  private final Pace pace;
  private final Path link;
  private final Thread thread;
  private final ConcurrentLinkedQueue<Consumer<SimLogger>> tasks = new ConcurrentLinkedQueue<>();
  private final NavigableMap<Long, Long> sent = new ConcurrentSkipListMap<>();
  private final CompletableFuture<Void> atEnd = new CompletableFuture<>();
  private volatile boolean ends;
  private volatile long untilMicros = Long.MAX_VALUE;
  private Pty pty;
  private long deviceMicros;

  PtyLogger(SimLogger logger, Pace pace, Path link) throws IOException {
    this.logger = logger;
    this.pace = pace;
    this.link = link;
    this.pty = Pty.open(link);
    this.thread = new Thread(this::run, "logger");
    thread.setDaemon(true);
    thread.start();
  }

  /** Its time stands still from there on; done when that is reached and said. */
  CompletableFuture<Void> until(long micros) {
    untilMicros = micros;
    return atEnd;
  }

  /** Samples that were on the line at this moment of {@link System#nanoTime}. */
  long sentBy(long nanoTime) {
    var last = sent.floorEntry(nanoTime);
    return last == null ? 0 : last.getValue();
  }

  /** Does something with the logger, between two steps of it; done when this returns. */
  void tell(Consumer<SimLogger> task) {
    CompletableFuture<Void> done = new CompletableFuture<>();
    tasks.add(
        told -> {
          task.accept(told);
          done.complete(null);
        });
    try {
      done.get(PATIENCE_S, TimeUnit.SECONDS);
    } catch (InterruptedException | ExecutionException | TimeoutException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Pulls the plug; the logger goes on. */
  void unplug() {
    tell(
        told -> {
          pty.close();
          pty = null;
        });
  }

  /** Plugs it in again, under the same name. */
  void plug() {
    tell(
        told -> {
          try {
            pty = Pty.open(link);
          } catch (IOException e) {
            throw new IllegalStateException(e);
          }
        });
  }

  private void run() {
    byte[] in = new byte[4096];
    long startNs = System.nanoTime();
    while (!ends) {
      for (Consumer<SimLogger> task = tasks.poll(); task != null; task = tasks.poll()) {
        task.accept(logger);
      }
      boolean fast = pace == Pace.FAST && logger.running && deviceMicros < untilMicros;
      int got = pty == null ? 0 : pty.read(in, fast ? 0 : 1);
      if (got > 0) {
        logger.hear(in, got);
      }
      long nextMicros =
          pace == Pace.REAL
              ? (System.nanoTime() - startNs) / 1000
              : deviceMicros + (fast ? STEP_MICROS : 0);
      deviceMicros = Math.min(nextMicros, untilMicros);
      logger.passTo(deviceMicros);
      byte[] said = logger.take();
      if (pty != null && said.length > 0) {
        write(said);
      }
      if (pace == Pace.REAL) {
        sent.put(System.nanoTime(), logger.number());
      }
      if (deviceMicros == untilMicros) {
        atEnd.complete(null);
      }
    }
    if (pty != null) {
      pty.close();
    }
  }

  /** What is said while no host listens is lost, as on any line. */
  private void write(byte[] said) {
    try {
      pty.write(said);
    } catch (IOException e) {
      atEnd.completeExceptionally(e);
    }
  }

  @Override
  public void close() {
    ends = true;
    try {
      thread.join(TimeUnit.SECONDS.toMillis(PATIENCE_S));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
