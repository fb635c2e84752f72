package tripline.harness.rehearse;

import java.util.concurrent.locks.LockSupport;

/** Real time, as a rehearsal sees it. */
public interface Pace {
  /** A clock that never steps, ns. */
  long nanoTime();

  /** Lets about so much of it pass, ns. */
  void pause(long durationNs);

  /** That of this machine. */
  Pace REAL =
      new Pace() {
        @Override
        public long nanoTime() {
          return System.nanoTime();
        }

        @Override
        public void pause(long durationNs) {
          LockSupport.parkNanos(durationNs);
        }
      };
}
