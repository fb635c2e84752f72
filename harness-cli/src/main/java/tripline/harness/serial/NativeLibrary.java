package tripline.harness.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sees to it that native code is loaded from a folder that only this user can write to. The
 * launcher names such a folder for the serial library; without it that library would unpack to a
 * fixed path in the temporary folder, where anybody may have put something else first. Here it, and
 * what {@link Hangup} needs, are made to unpack to a folder of their own.
 */
final class NativeLibrary {
  private static final String PLACE = "jSerialComm.library.path";
  private static final String CALLS_PLACE = "jna.tmpdir";
  private static final String TEMPORARY = "java.io.tmpdir";
  private static final Logger LOG = LoggerFactory.getLogger(NativeLibrary.class);
  private static boolean loaded;

  private NativeLibrary() {}

  /** Loads it, once. */
  static synchronized void load() {
    if (loaded) {
      return;
    }
    Optional<Path> own = ownFolder();
    own.ifPresentOrElse(NativeLibrary::loadBy, SerialPort::getVersion);
    loaded = true;
  }

  /** Empty where there can be none and the serial library needs none. */
  private static Optional<Path> ownFolder() {
    try {
      return Optional.of(Files.createTempDirectory("tripline-serial"));
    } catch (IOException e) {
      if (System.getProperty(PLACE, "").isEmpty()) {
        throw new UncheckedIOException("no temporary folder for the serial library", e);
      }
      LOG.debug("no temporary folder, so SIGHUP will be ignored: {}", e.toString());
      return Optional.empty();
    }
  }

  private static void loadBy(Path own) {
    System.setProperty(CALLS_PLACE, own.toString());
    Hangup.keptThrough(
        () -> {
          String usual = System.getProperty(TEMPORARY, ".");
          try {
            System.setProperty(TEMPORARY, own.toString());
            SerialPort.getVersion();
          } finally {
            System.setProperty(TEMPORARY, usual);
          }
        });
    remove(own);
    if (Files.exists(own)) {
      // Windows keeps a library that is loaded.
      Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(own)));
    }
  }

  /** As far as it goes. */
  private static void remove(Path folder) {
    try (Stream<Path> inside = Files.walk(folder)) {
      inside.sorted(java.util.Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
    } catch (IOException e) {
      folder.toFile().deleteOnExit();
    }
  }
}
