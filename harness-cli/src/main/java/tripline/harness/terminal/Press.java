package tripline.harness.terminal;

import org.jspecify.annotations.Nullable;
import tripline.sample.Mark;

/**
 * What an operator pressed or wrote.
 *
 * @param key which
 * @param text of a note; for {@link Key#UNKNOWN} what was pressed
 */
public record Press(Key key, String text) {
  /** The mark it sets, or null if it sets none. */
  public @Nullable Mark mark() {
    return switch (key) {
      case CLOSED_STOP -> Mark.CLOSED_STOP;
      case OPEN_STOP -> Mark.OPEN_STOP;
      case ADJUSTED -> Mark.ADJUSTED;
      case NOTE -> Mark.NOTE;
      case QUIT, UNKNOWN -> null;
    };
  }

  /** Keys that mean something while a logger is recorded. */
  public enum Key {
    CLOSED_STOP('c'),
    OPEN_STOP('o'),
    ADJUSTED('a'),
    NOTE('n'),
    QUIT('q'),
    /** None of these. */
    UNKNOWN('\0');

    private final char letter;

    Key(char letter) {
      this.letter = letter;
    }

    static Key of(char pressed) {
      for (Key key : values()) {
        if (key.letter == Character.toLowerCase(pressed)) {
          return key;
        }
      }
      return UNKNOWN;
    }
  }
}
