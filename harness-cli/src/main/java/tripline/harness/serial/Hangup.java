package tripline.harness.serial;

import com.sun.jna.Function;
import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import java.io.File;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the process does at SIGHUP, the signal of a terminal that is closed. The serial library
 * makes the process ignore it when it is loaded, and the runtime then refuses to listen for it: so
 * what was agreed before is noted and put back. What was ignored before ({@code nohup}) stays
 * ignored.
 *
 * <p>POSIX has one call for it, {@code sigaction}; its answer is handed back unread, so that its
 * layout, which differs from system to system, does not matter.
 */
final class Hangup {
  /** By POSIX.1, {@code kill}: signal 1 is SIGHUP everywhere. */
  private static final int SIGHUP = 1;

  /** More than any system's {@code struct sigaction}: 152 bytes on 64-bit Linux. */
  private static final int ROOM_BYTES = 1024;

  private static final Logger LOG = LoggerFactory.getLogger(Hangup.class);

  private Hangup() {}

  /** Does something, and sees to it that SIGHUP does afterwards what it did before. */
  static void keptThrough(Runnable what) {
    if (File.separatorChar != '/') {
      what.run();
      return;
    }
    Function sigaction;
    Memory before;
    try {
      sigaction = Function.getFunction("c", "sigaction");
      before = new Memory(ROOM_BYTES);
      call(sigaction, Pointer.NULL, before);
    } catch (LinkageError | IllegalStateException e) {
      LOG.debug("SIGHUP will be ignored: {}", e.toString());
      what.run();
      return;
    }
    try {
      what.run();
    } finally {
      if (sigaction.invokeInt(new Object[] {SIGHUP, before, Pointer.NULL}) != 0) {
        LOG.warn("SIGHUP will be ignored: sigaction failed");
      }
    }
  }

  private static void call(Function sigaction, Pointer next, Pointer before) {
    if (sigaction.invokeInt(new Object[] {SIGHUP, next, before}) != 0) {
      throw new IllegalStateException("sigaction failed");
    }
  }
}
