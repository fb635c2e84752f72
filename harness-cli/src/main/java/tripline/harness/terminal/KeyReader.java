package tripline.harness.terminal;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Makes presses of characters: each on its own, or by the line. */
final class KeyReader {
  /** How characters come. */
  enum Manner {
    /** Each key at once. */
    KEYS,
    /** By the line, after Enter. */
    LINES
  }

  private static final int MOST_TEXT = 100;
  private static final char ESCAPE = '\u001b';
  private static final char DELETE = '\u007f';

  private final Manner manner;
  private final Consumer<Press> presses;
  private final StringBuilder text = new StringBuilder();
  private boolean note;

  KeyReader(Manner manner, Consumer<Press> presses) {
    this.manner = manner;
    this.presses = presses;
  }

  /** The note that is being written, or null. */
  @Nullable String note() {
    return note ? text.toString() : null;
  }

  /** Takes the next character. */
  void accept(char c) {
    if (manner == Manner.LINES) {
      inLine(c);
    } else if (note) {
      inNote(c);
    } else if (c > ' ' && c != DELETE) {
      Press.Key key = Press.Key.of(c);
      note = key == Press.Key.NOTE;
      if (!note) {
        presses.accept(new Press(key, key == Press.Key.UNKNOWN ? String.valueOf(c) : ""));
      }
    }
  }

  private void inNote(char c) {
    if (c == '\n' || c == '\r') {
      presses.accept(new Press(Press.Key.NOTE, text.toString().strip()));
      endNote();
    } else if (c == ESCAPE) {
      endNote();
    } else if (c == DELETE || c == '\b') {
      text.setLength(Math.max(0, text.length() - 1));
    } else if (c >= ' ' && text.length() < MOST_TEXT) {
      text.append(c);
    }
  }

  private void endNote() {
    text.setLength(0);
    note = false;
  }

  private void inLine(char c) {
    if (c != '\n') {
      if (text.length() < MOST_TEXT && c >= ' ') {
        text.append(c);
      }
      return;
    }
    String line = text.toString().strip();
    text.setLength(0);
    if (line.isEmpty()) {
      return;
    }
    Press.Key key = Press.Key.of(line.charAt(0));
    boolean alone = line.length() == 1 || (key == Press.Key.NOTE && line.charAt(1) == ' ');
    presses.accept(
        alone && key != Press.Key.UNKNOWN
            ? new Press(key, line.substring(1).strip())
            : new Press(Press.Key.UNKNOWN, line));
  }
}
