package tripline.harness.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * Sees to it that the library's native part is loaded from a folder that only this user can write
 * to. The launcher names such a folder. Without it the library would unpack to a fixed path in the
 * temporary folder, where anybody may have put something else first; here it is made to unpack to a
 * folder of its own.
 */
final class NativeLibrary {
  private static final String PLACE = "jSerialComm.library.path";
  private static final String TEMPORARY = "java.io.tmpdir";
  private static boolean loaded;

  private NativeLibrary() {}

  /** Loads it, once. */
  static synchronized void load() {
    if (loaded) {
      return;
    }
    if (System.getProperty(PLACE, "").isEmpty()) {
      String usual = System.getProperty(TEMPORARY, ".");
      try {
        Path own = Files.createTempDirectory("tripline-serial");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(own)));
        System.setProperty(TEMPORARY, own.toString());
        SerialPort.getVersion();
      } catch (IOException e) {
        throw new UncheckedIOException("no temporary folder for the serial library", e);
      } finally {
        System.setProperty(TEMPORARY, usual);
      }
    } else {
      SerialPort.getVersion();
    }
    loaded = true;
  }

  /** As far as it goes: Windows keeps a library that is loaded. */
  private static void remove(Path folder) {
    try (Stream<Path> inside = Files.walk(folder)) {
      inside.sorted(java.util.Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
    } catch (IOException e) {
      folder.toFile().deleteOnExit();
    }
  }
}
