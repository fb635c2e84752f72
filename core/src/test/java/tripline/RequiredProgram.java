package tripline;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * A program that a test needs beside the JDK. Where it is missing the test reports itself skipped,
 * or fails when {@code -Dtripline.require=all} is set.
 */
public final class RequiredProgram {
  private RequiredProgram() {}

  /** Skips or fails the running test unless {@code name --version} runs. */
  public static void need(String name) {
    need(name, "--version");
  }

  /** Skips or fails the running test unless the program runs when asked for its version so. */
  public static void need(String name, String versionOption) {
    if (runs(name, versionOption)) {
      return;
    }
    if (System.getProperty("tripline.require", "").equals("all")) {
      Assertions.fail(name + " is required by -Dtripline.require=all, and does not run here");
    }
    Assumptions.abort(name + " does not run here");
  }

  private static boolean runs(String name, String versionOption) {
    try {
      Process process =
          new ProcessBuilder(name, versionOption)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
