package tripline.harness.report;

import java.io.Console;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.util.Map;

/**
 * Colour on a terminal. It only repeats what a word or a mark beside it says already: a reader who
 * sees none misses nothing.
 */
public enum Ink {
  /** No colour at all. */
  PLAIN,
  /** The eight colours every terminal has (ECMA-48 SGR). */
  ANSI;

  /** What a piece of text is; chooses its colour. */
  enum Tone {
    BODY(""),
    GOOD("32"),
    BAD("1;31"),
    DOUBT("33"),
    HEAD("1");

    private final String sgr;

    Tone(String sgr) {
      this.sgr = sgr;
    }
  }

  /** Colour if standard output is a terminal and nothing in the environment speaks against it. */
  public static Ink ofProcess() {
    return of(System.getenv(), isTerminal(System.console()));
  }

  /**
   * @param environment {@code NO_COLOR} set to anything, or a {@code TERM} that is {@code dumb},
   *     forbids colour
   * @param terminal whether the answer goes to a terminal
   */
  static Ink of(Map<String, String> environment, boolean terminal) {
    boolean refused =
        !environment.getOrDefault("NO_COLOR", "").isEmpty()
            || environment.getOrDefault("TERM", "").equals("dumb");
    return terminal && !refused ? ANSI : PLAIN;
  }

  /** Before Java 22 there is a console only on a terminal; since then it has to be asked. */
  private static boolean isTerminal(@org.jspecify.annotations.Nullable Console console) {
    if (console == null || Runtime.version().feature() < 22) {
      return console != null;
    }
    try {
      return (boolean)
          MethodHandles.publicLookup()
              .findVirtual(Console.class, "isTerminal", MethodType.methodType(boolean.class))
              .invoke(console);
    } catch (Throwable e) {
      return false;
    }
  }

  /** A text in the colour of what it is; takes no room of its own. */
  String paint(Tone tone, String text) {
    return this == PLAIN || tone == Tone.BODY || text.isBlank()
        ? text
        : "\u001b[" + tone.sgr + "m" + text + "\u001b[0m";
  }
}
