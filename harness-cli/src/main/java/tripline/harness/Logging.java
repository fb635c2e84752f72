package tripline.harness;

import ch.qos.logback.classic.Logger;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

/** Which levels are logged. Logback itself is loaded by the first logger, not before. */
final class Logging {
  /** Environment variable that names a level where {@code --log} does not. */
  static final String VARIABLE = "TRIPLINE_LOG";

  private Logging() {}

  /** Logs from this level on; without one, nothing is touched and nothing loaded. */
  static void from(@Nullable Level asked) {
    if (asked != null && LoggerFactory.getLogger(Logger.ROOT_LOGGER_NAME) instanceof Logger root) {
      root.setLevel(ch.qos.logback.classic.Level.convertAnSLF4JLevel(asked));
    }
  }

  /** The level an environment's text names; warn where it is missing or none. */
  static Level named(@Nullable String text) {
    for (Level level : Level.values()) {
      if (text != null && level.name().equals(text.trim().toUpperCase(Locale.ROOT))) {
        return level;
      }
    }
    return Level.WARN;
  }
}
