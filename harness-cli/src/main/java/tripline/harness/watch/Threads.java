package tripline.harness.watch;

/** Waiting for threads that were told to end. */
final class Threads {
  private Threads() {}

  /** Returns when a thread has ended, whoever interrupts; the interruption is passed on. */
  static void join(Thread thread) {
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
