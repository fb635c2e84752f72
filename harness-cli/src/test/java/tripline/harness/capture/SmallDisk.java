package tripline.harness.capture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** A file system with little room, in memory; Linux makes one for root only. */
final class SmallDisk implements AutoCloseable {
  private final Path place;

  private SmallDisk(Path place) {
    this.place = place;
  }

  /** Skips the running test where there can be none, or fails it if all is required. */
  static SmallDisk of(Path place, int kilobytes) throws IOException {
    Files.createDirectories(place);
    String size = "size=" + kilobytes + "k";
    if (!run("mount", "-t", "tmpfs", "-o", size, "tripline-test", place.toString())) {
      String why = "a small disk is mounted by root only, and not here";
      if (System.getProperty("tripline.require", "").equals("all")) {
        Assertions.fail(why + ", but required by -Dtripline.require=all");
      }
      Assumptions.abort(why);
    }
    return new SmallDisk(place);
  }

  Path place() {
    return place;
  }

  private static boolean run(String... command) {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  @Override
  public void close() {
    if (!run("umount", place.toString())) {
      throw new IllegalStateException("umount " + place);
    }
  }
}
