package tripline.harness.watch;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tripline.job.JobSheet;
import tripline.live.LiveAnswer;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;

/**
 * Explains a recording that goes on, on a thread of its own: soon after something happened, for as
 * long as its figures still get better, and else once a second. However long that comes to take, it
 * rests as long as it worked: at most half of one processor.
 */
final class Explainer implements AutoCloseable {
  /** How long after something happened its figures still get better: the widest window of a fit. */
  private static final long SETTLING_NS = 2_500_000_000L;

  private static final long USUAL_NS = 1_000_000_000L;
  private static final long SOON_NS = 60_000_000L;

  /** What is explained. */
  interface Source {
    /** Rises with everything that may change the answer. */
    long happenings();

    /** The recordings so far, as if they ended now; empty before the first sample. */
    List<RecordingTrace> traces();
  }

  private final JobSheet sheet;
  private final Optional<Reference> reference;
  private final Source source;
  private final Consumer<LiveAnswer> answers;
  private final Thread thread = new Thread(this::run, "explain");
  private boolean ended;
  private final Fault fault = new Fault();

  /**
   * @param answers gets every answer, on this thread
   */
  Explainer(
      JobSheet sheet, Optional<Reference> reference, Source source, Consumer<LiveAnswer> answers) {
    this.sheet = sheet;
    this.reference = reference;
    this.source = source;
    this.answers = answers;
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    long seen = -1;
    long happenedNs = System.nanoTime() - SETTLING_NS;
    long startedNs = System.nanoTime() - USUAL_NS;
    try {
      while (!hasEnded()) {
        long nowNs = System.nanoTime();
        long happenings = source.happenings();
        if (happenings != seen) {
          seen = happenings;
          happenedNs = nowNs;
        }
        long everyNs = nowNs - happenedNs < SETTLING_NS ? SOON_NS : USUAL_NS;
        if (nowNs - startedNs >= everyNs) {
          startedNs = nowNs;
          explain();
          long tookNs = System.nanoTime() - startedNs;
          startedNs += tookNs;
          pause(tookNs);
        }
        pause(SOON_NS / 4);
      }
    } catch (RuntimeException e) {
      fault.keep(e);
    }
  }

  private void explain() {
    List<RecordingTrace> traces = source.traces();
    if (!traces.isEmpty()) {
      answers.accept(LiveAnswer.of(sheet, traces, reference));
    }
  }

  private synchronized boolean hasEnded() {
    return ended;
  }

  private synchronized void pause(long ns) {
    try {
      long untilNs = System.nanoTime() + ns;
      for (long left = ns; !ended && left > 0; left = untilNs - System.nanoTime()) {
        wait(Math.max(1, left / 1_000_000));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      ended = true;
    }
  }

  /**
   * Throws what went wrong, if anything did.
   *
   * @throws RuntimeException a fault of the program
   */
  void check() {
    fault.check();
  }

  /** Ends the thread; an answer under way is finished first. */
  @Override
  public void close() {
    synchronized (this) {
      ended = true;
      notifyAll();
    }
    Threads.join(thread);
  }
}
