package tripline.harness.watch;

import org.jspecify.annotations.Nullable;

/** What ended a thread by a fault of the program, kept for the one that can say so. */
final class Fault {
  private volatile @Nullable RuntimeException kept;

  /** On the thread that it ends. */
  void keep(RuntimeException thrown) {
    kept = thrown;
  }

  /**
   * Throws what was kept, if anything was.
   *
   * @throws RuntimeException a fault of the program
   */
  void check() {
    RuntimeException thrown = kept;
    if (thrown != null) {
      throw thrown;
    }
  }
}
